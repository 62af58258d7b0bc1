"""The fit of a brake by the command line: the answer, the figure, what is refused, and the stand file that it changes."""

import json
import xml.etree.ElementTree as tree

import harness

EXAMPLES = harness.PROJECT / "examples"
STAND = EXAMPLES / "01-label-slitter.toml"
READINGS = EXAMPLES / "05-label-slitter-readings.csv"
MOUNTED = ["--brake", "disc 330", "--grade", "middle"]


class Fit(harness.Case):
    def setUp(self):
        super().setUp()
        self.stand = self.file("stand.toml", STAND.read_text(encoding="utf-8"))

    def fit(self, *more, readings=READINGS, **how):
        return self.answered("fit", readings, "--stand", self.stand, *MOUNTED, *more, **how)

    def found(self, *more, **how):
        return json.loads(self.fit("--json", *more, **how))["fit"]

    def table(self, *rows, head="pressure [bar],torque [N*m],pairs"):
        return self.file("readings.csv", "\n".join([head, *rows]) + "\n")

    def test_the_example_gives_back_what_it_was_made_from(self):
        # Made with friction 0.93 of 0.33, threshold 0.11 bar, drag 0.62 N·m, 0.05 bar between rising and falling, and
        # row 9 raised by 22 %.
        fit = self.found()
        for key, truth in [("friction_share", 0.93), ("threshold", 0.11e5), ("drag", 0.62), ("hysteresis", 0.05e5)]:
            self.assertLessEqual(fit[key + "_low"], truth, key)
            self.assertGreaterEqual(fit[key + "_high"], truth, key)
        self.assertEqual([reading["row"] for reading in fit["readings"] if reading["outlier"]], [9])
        self.assertEqual(fit["verdicts"][0]["cause"], "as_expected")
        self.assertAlmostEqual(sum(verdict["share"] for verdict in fit["verdicts"]), 1, delta=0.1)

    def test_the_text_in_both_unit_systems(self):
        for units, torque in (("si", "N·m"), ("us", "in·lbf")):
            text = self.fit("--units", units)
            for part in ("The brake does what the file says", "95 % interval", torque, "left out", "Cautions",
                         "Columns read from", "Readings to take next"):
                self.assertIn(part, text)

    def test_without_a_brake_the_recommended_one_is_taken_and_told(self):
        text = " ".join(self.answered("fit", READINGS, "--stand", self.stand).split())
        self.assertIn("the brake that was read is taken to be the one that is recommended for the mix", text)
        self.assertIn("name brake, grade and number of brakes", text)
        self.assertNotIn("--", text)  # the page says the same, and has no options

    def test_the_figure(self):
        self.fit("--svg", self.folder / "figures")
        figure = tree.parse(self.folder / "figures" / "fit.svg").getroot()
        texts = [text.text for text in figure.iter("{http://www.w3.org/2000/svg}text")]
        for part in ("The brake as read", "fitted, 4 pairs", "fitted, 2 pairs", "row 9, left out"):
            self.assertIn(part, texts)

    def test_write_changes_three_values_and_nothing_else(self):
        before = self.stand.read_text(encoding="utf-8").splitlines()
        text = self.fit("--write")
        self.assertIn("threshold_pressure", text)
        after = self.stand.read_text(encoding="utf-8").splitlines()
        self.assertEqual(len(before), len(after))
        changed = {a.split(" = ")[0] for a, b in zip(before, after) if a != b}
        self.assertEqual(changed, {"friction", "threshold_pressure", "drag"})
        self.assertEqual(sorted(path.name for path in self.folder.iterdir()), ["stand.toml"])  # nothing left beside it
        self.assertIn("It says so already", self.fit("--write"))

    def test_every_other_command_uses_the_fitted_brake(self):
        def pressures():
            plan = json.loads(self.answered("plan", self.stand, *MOUNTED, "--json"))["plan"]
            return [point["pressure"] for job in plan["jobs"] for point in job["automatic"]]

        before = pressures()
        fit = self.found("--write")
        after = pressures()
        self.assertEqual(len(before), len(after))
        self.assertNotEqual(before, after)
        # p = p_0 + (T R − M_d)/K: lower friction and a higher threshold ask for more pressure.
        self.assertGreater(sum(after), sum(before))
        again = self.found()
        self.assertAlmostEqual(again["friction_share"], 1, delta=1e-3)
        self.assertAlmostEqual(again["threshold_in_file"], fit["threshold"], delta=10)

    def test_write_is_refused_when_the_readings_do_not_carry_it(self):
        text = self.stand.read_text(encoding="utf-8")
        for rows in (["2,20,4", "2.2,26,4", "2.4,24,4"],  # too close
                     ["1,5.9,1", "2,12.3,1", "3,18.8,1", "1,5.9,2", "2,12.3,2", "3,18.8,2"]):  # the second pair is dead
            done = harness.run("fit", self.table(*rows), "--stand", self.stand, *MOUNTED, "--write")
            self.assertEqual(done.returncode, 1, done.stdout + done.stderr)
            self.assertIn("It is left as it is", done.stdout)
            self.assertEqual(self.stand.read_text(encoding="utf-8"), text)

    def fault(self, share=1.0, shift=0.0, top=2.4):
        """Readings of a brake of the file (33 % friction, 0.08 bar) with a fault; every third is off by 0.6 %."""
        rows = []
        for pairs in (2, 4):
            for pressure in (0.8, 1.2, 1.6, 2, top):
                scatter = 1 + 0.006 * (len(rows) % 3 - 1)
                rows.append(f"{pressure},{0.55 + scatter * share * pairs * 6.47 * (pressure - 0.08 - shift):.4f},{pairs}")
        return self.table(*rows)

    def test_write_is_refused_for_every_fault_and_says_what_to_do(self):
        text = self.stand.read_text(encoding="utf-8")
        for readings, parts in (
                (dict(share=0.45), ("the pads seem glazed or oily", "replace them, run in and read again")),
                (dict(share=0.61), ("another grade seems to be fitted", '"low"', "fit with that one")),
                (dict(share=1.6), ("friction is above the band", "a name of its own")),
                (dict(shift=0.5), ("the pads seem worn", "measure them")),
                (dict(shift=-0.5), ("the gauge seems to be off", "vent the line"))):
            done = harness.run("fit", self.fault(**readings), "--stand", self.stand, *MOUNTED, "--write")
            told = " ".join(done.stdout.split())
            self.assertEqual(done.returncode, 1, told + done.stderr)
            self.assertIn("It is left as it is: ", told)
            for part in parts:
                self.assertIn(part, told.split("It is left as it is: ")[1].split("Columns")[0])
            self.assertEqual(self.stand.read_text(encoding="utf-8"), text, readings)

    def test_a_brake_of_another_grade_is_written_to_that_grade(self):
        grade = ["--brake", "disc 330", "--grade", "low"]
        told = self.answered("fit", self.fault(share=0.61), "--stand", self.stand, *grade, "--write")
        self.assertIn('brake "disc 330", grade "low": friction = 0.20', told)

    def test_many_grades_leave_a_verdict(self):
        grades = [f'[[brake.grade]]\nname = "hard {i}"\nfriction = {0.52 + 0.0005 * i}\nfriction_band = "18 %"\n'
                  'temperature_limit = "270 degC"\nwear_rate = "25 mm3/MJ"\n' for i in range(30)]
        text = self.stand.read_text(encoding="utf-8")
        at = text.index("[[brake.grade]]", text.index('name = "disc 330"'))
        self.stand.write_text(text[:at] + "\n".join(grades) + "\n" + text[at:], encoding="utf-8")
        done = harness.run("fit", self.fault(share=1.6), "--stand", self.stand, *MOUNTED, "--write")
        self.assertEqual(done.returncode, 1, done.stderr)
        self.assertIn('Another grade seems to be fitted: "hard', " ".join(done.stdout.split()))

    def test_torque_that_does_not_rise_is_said_with_the_evidence(self):
        done = harness.run("fit", self.table("1,0,4", "2,0,4", "3,0,4"), "--stand", self.stand, *MOUNTED, "--write")
        told = " ".join(done.stdout.split())
        self.assertEqual(done.returncode, 1, done.stderr)
        for part in ("Torque does not rise with pressure", "From 1.00 bar to 3.00 bar the torque goes from 0 N·m to 0 N·m",
                     "torque does not rise with pressure in these readings; take those", "Cautions"):
            self.assertIn(part, told)
        self.assertNotIn("The brake as read", told)

    def test_readings_to_take_next_keep_to_what_the_web_takes(self):
        # 25 % of 16 MPa on 330 mm × 110 µm, by hand from the file: 145.2 N; on the smallest roll read, 514 mm.
        most = 145.2 * 0.514 / 2
        fit = self.found("--job", "clear labels")
        self.assertTrue(fit["next"])
        for reading in fit["next"]:
            self.assertLessEqual(reading["torque"], most)
        self.assertIn('what that of job "clear labels" takes', " ".join(self.fit("--job", "clear labels").split()))

    def test_pads_are_no_pairs(self):
        told = self.refused("fit", self.table("1,20,8", "2,40,8", "3,60,8", head="pressure [bar],torque [N*m],pads"),
                            "--stand", self.stand, *MOUNTED)
        self.assertIn("a pair is two pads", told)

    def test_a_row_of_units_below_the_head(self):
        rows = ["bar,N*m,-", "1,23.8,4", "2,49.7,4", "3,75.6,4"]
        fit = json.loads(self.fit("--json", readings=self.table(*rows, head="pressure,torque,pairs")))["fit"]
        self.assertEqual([reading["torque"] for reading in fit["readings"]], [23.8, 49.7, 75.6])

    def test_wrong_readings_are_told_by_row_and_column_and_nothing_is_answered(self):
        told = self.refused("fit", self.table("-1,20,4", "2,-20,4", "x,20,4", "3,20,9"), "--stand", self.stand, *MOUNTED)
        for part in ("row 2, pressure", "row 3, torque", "row 4, pressure", "row 5, pairs"):
            self.assertIn(part, told)

    def test_one_reading_and_one_pressure_are_no_line(self):
        for rows, part in ((["2,20,4"], "only one reading"), (["2,20,4", "2,21,4"], "all readings are at one pressure")):
            self.assertIn(part, self.refused("fit", self.table(*rows), "--stand", self.stand, *MOUNTED))

    def test_a_diameter_that_no_roll_has_is_warned_of(self):
        rows = self.table("1,30,900,4", "2,60,900,4", "3,90,900,4", head="pressure [bar],tension [N],diameter [mm],pairs")
        done = harness.run("fit", rows, "--stand", self.stand, *MOUNTED)
        self.assertEqual(done.returncode, 0)
        self.assertIn("row 2, diameter", done.stderr)

    def test_calls_that_make_no_sense(self):
        self.assertIn("--stand", self.refused("fit", READINGS))
        self.assertIn("no candidate", self.refused("fit", READINGS, "--stand", self.stand, "--brake", "none such"))
        self.assertIn("--write", self.refused("fit", READINGS, "--stand", "-", "--write", text=STAND.read_text("utf-8")))

    def test_the_example_is_listed_as_what_it_is(self):
        self.assertIn("label-slitter-readings", self.answered("example"))
        self.assertIn("readings at a brake", self.answered("example"))
        self.assertEqual(self.answered("example", "label-slitter-readings"), READINGS.read_text(encoding="utf-8"))


if __name__ == "__main__":
    harness.main()
