"""CSV as a spreadsheet reads it."""

import csv
import io
import json
import tomllib

import harness


class Csv(harness.Case):
    def rows(self, *arguments):
        return list(csv.DictReader(io.StringIO(self.answered(*arguments, "--csv"), newline=""), strict=True))

    def test_size_has_one_row_a_job_that_agrees_with_the_json(self):
        for example in harness.EXAMPLES:
            rows = self.rows("size", example)
            jobs = json.loads(self.answered("size", example, "--json"))["choice"]["recommended"]["jobs"]
            self.assertEqual([row["job"] for row in rows], [job["job"] for job in jobs])
            for row, job in zip(rows, jobs):
                self.assertEqual(row["state"], job["state"])
                self.assertAlmostEqual(float(row["pressure_full [bar]"]) * 1e5, job["pressure_full"], delta=1e-3)
                self.assertAlmostEqual(float(row["hottest [°C]"]) + 273.15, job["hottest"], delta=1e-6)
                for limit in job["limits"]:
                    self.assertAlmostEqual(float(row["margin_" + limit["key"]]), limit["margin"], delta=1e-6)

    def test_check_has_one_row_a_job_of_the_file(self):
        for example in harness.EXAMPLES:
            jobs = [job["name"] for job in tomllib.loads(example.read_text(encoding="utf-8"))["job"]]
            self.assertEqual([row["job"] for row in self.rows("check", example)], jobs)

    def test_plan_falls_from_full_to_core_in_both_parts(self):
        for example in harness.EXAMPLES:
            rows = self.rows("plan", example)
            for job in {row["job"] for row in rows}:
                for part in ("automatic", "hand"):
                    diameters = [float(row["diameter [mm]"]) for row in rows if row["job"] == job and row["part"] == part]
                    self.assertEqual(diameters, sorted(diameters, reverse=True), (example.name, job, part))

    def test_us_units_stand_in_the_head(self):
        rows = self.rows("size", harness.EXAMPLES[0], "--units", "us")
        self.assertIn("pressure_full [psi]", rows[0])
        si = self.rows("size", harness.EXAMPLES[0])
        # 1 psi = 6894.757293168 Pa (NIST SP 811, B.8)
        self.assertAlmostEqual(float(rows[0]["pressure_full [psi]"]) * 6894.757293168, float(si[0]["pressure_full [bar]"]) * 1e5,
                               delta=0.01)


if __name__ == "__main__":
    harness.main()
