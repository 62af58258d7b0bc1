"""A log by the command line: what is read, what is answered, what is refused, and that its length costs no memory."""

import csv
import io
import json
import resource
import subprocess
import xml.etree.ElementTree as tree

import harness

EXAMPLES = harness.PROJECT / "examples"
STAND = EXAMPLES / "04-film-in-motion.toml"
LOG = EXAMPLES / "06-film-in-motion-log.csv"
JOB = ("--stand", STAND, "--job", "clear film")
SVG = "{http://www.w3.org/2000/svg}"


class Diagnose(harness.Case):
    def found(self, *arguments, **how):
        return json.loads(self.answered("diagnose", *arguments, *JOB, "--json", **how))

    def test_the_example_is_read_whole(self):
        rows = [line for line in LOG.read_text(encoding="utf-8").splitlines() if line[:1].isdigit()]
        answer = self.found(LOG)
        reading = answer["diagnosis"]["reading"]
        self.assertEqual(reading["rows"], len(rows))
        self.assertEqual(reading["left_out"], [])
        first, last = (float(row.split(",")[0]) for row in (rows[0], rows[-1]))
        self.assertAlmostEqual(reading["span"], last - first, places=6)
        self.assertAlmostEqual(reading["interval"], 0.1, places=6)
        self.assertEqual([column["field"] for column in answer["columns"]],
                         ["time", "speed", "tension", "pressure", "diameter"])
        tensions = [float(row.split(",")[2]) for row in rows]
        channel = next(each for each in answer["diagnosis"]["channels"] if each["channel"] == "tension")
        self.assertEqual(channel["readings"], len(rows))
        self.assertAlmostEqual(channel["highest"], max(tensions), places=6)

    def test_the_hole_of_the_example_is_found(self):
        diagnosis = self.found(LOG)["diagnosis"]
        self.assertEqual(diagnosis["gaps"], 1)
        self.assertAlmostEqual(diagnosis["longest_gaps"][0]["begin"] + 0.1, 400, delta=0.11)

    def test_the_roll_that_is_out_of_round_is_named(self):
        self.assertEqual(self.found(LOG)["diagnosis"]["causes"][0]["kind"], "runout")

    def test_times_in_a_wrong_unit_are_told_and_take_no_time(self):
        rows = "".join(f"{i * 1e-9:.12f},88\n" for i in range(20))
        done = harness.run("diagnose", self.file("nano.csv", "time [s],tension [N]\n" + rows), *JOB)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn("the unit that the head names", done.stderr)

    def test_standard_input_is_read_as_a_file(self):
        text = LOG.read_text(encoding="utf-8")
        piped, named = self.found("-", text=text), self.found(LOG)
        for answer in (piped, named):
            answer["diagnosis"]["log"] = answer["diagnosis"]["reading"]["name"] = ""
            answer.pop("columns")
        self.assertEqual(piped, named)

    def test_threads_do_not_change_the_answer(self):
        self.assertEqual(self.found(LOG, "--threads", "1"), self.found(LOG, "--threads", "2"))

    def test_text_fits_the_terminal_in_both_systems(self):
        for units, unit in (("si", "[N]"), ("us", "[lbf]")):
            text = self.answered("diagnose", LOG, *JOB, "--units", units)
            self.assertIn("Likely cause", text)
            self.assertIn(unit, text)
            self.assertLessEqual(max(map(len, text.splitlines())), 100)

    def test_figures_are_drawn_and_described(self):
        self.answered("diagnose", LOG, *JOB, "--svg", self.folder)
        figures = sorted(path.name for path in self.folder.glob("*.svg"))
        self.assertIn("log-clear-film.svg", figures)
        self.assertIn("spectra-clear-film.svg", figures)
        for name in figures:
            root = tree.parse(self.folder / name).getroot()
            self.assertNotEqual(root.find(f"{SVG}desc").text.strip(), "")

    def test_csv_has_a_row_for_each_phase_and_each_change(self):
        diagnosis = self.found(LOG)["diagnosis"]
        rows = list(csv.DictReader(io.StringIO(self.answered("diagnose", LOG, *JOB, "--csv"))))
        self.assertEqual(len(rows), len(diagnosis["phases"]) + len(diagnosis["changes"]))

    def test_columns_and_rate_tell_what_the_head_does_not(self):
        lines = [line for line in LOG.read_text(encoding="utf-8").splitlines() if line[:1].isdigit()][:3000]
        bare = self.file("bare.csv", "\n".join(",".join(line.split(",")[1:]) for line in lines) + "\n")
        said = self.found(bare, "--rate", "10Hz", "--columns",
                          "speed=1 [m/min],tension=2 [N],pressure=3 [bar],diameter=4 [mm]")
        self.assertEqual(said["diagnosis"]["reading"]["rows"], 3000)
        self.assertAlmostEqual(said["diagnosis"]["reading"]["span"], 299.9, places=6)

    def test_a_part_is_read(self):
        reading = self.found(LOG, "--from", "1min", "--to", "2min")["diagnosis"]["reading"]
        self.assertEqual(reading["rows"], 601)

    def test_what_cannot_be_read_is_refused_with_a_reason(self):
        head = "time [s],tension [N],speed [m/min]\n"
        for text, said in (("tension [N],speed [m/min]\n1,2\n2,3\n", "has no time"),
                           ("time [s],speed [m/min]\n1,2\n2,3\n", "has no tension"),
                           ("time [s],tension\n1,2\n2,3\n", "has no unit"),
                           (head, "no head with rows"), ("", "is empty"),
                           (head + "0,1,1\n" + "broken\n" * 50, "cannot be read")):
            told = self.refused("diagnose", self.file("log.csv", text), *JOB)
            self.assertIn(said, told, text)
            self.assertIn("log.csv", told)
        self.assertIn("--rate", self.refused("diagnose", LOG, *JOB, "--rate", "fast"))
        self.assertIn("--columns", self.refused("diagnose", LOG, *JOB, "--columns", "tenson=2"))
        self.assertIn("needs --stand", self.refused("diagnose", LOG))
        self.assertIn("cannot be read", self.refused("diagnose", self.folder / "none.csv", *JOB))

    def test_a_wrong_cell_is_told_and_the_rest_is_read(self):
        text = LOG.read_text(encoding="utf-8").replace("\n100.0,180.0,", "\n100.0,18o.0,")
        done = harness.run("diagnose", self.file("log.csv", text), *JOB)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertRegex(done.stderr, r"log\.csv:1003:7: warning: the speed is no number")

    def test_a_long_log_takes_little_memory(self):
        def rows():
            yield "time [s],speed [m/min],tension [N],pressure [bar],diameter [mm]\n"
            for i in range(1_500_000):
                yield f"{i / 1000:.3f},180.0,{88 + i % 7}.0,1.500,{600 - i * 1e-5:.2f}\n"

        log = self.folder / "long.csv"
        with open(log, "w", encoding="utf-8") as file:
            file.writelines(rows())
        limit = 400_000_000  # bytes of address space beside the program's own; the log alone has 50 MB

        def bounded():
            resource.setrlimit(resource.RLIMIT_AS, (limit, limit))

        done = subprocess.run([harness.PROGRAM, "diagnose", log, *JOB, "--threads", "1", "--json"], env=harness.ENVIRONMENT,
                              preexec_fn=bounded, capture_output=True, timeout=100)
        self.assertIn(done.returncode, (0, 1), done.stderr[-500:])
        self.assertEqual(json.loads(done.stdout)["diagnosis"]["reading"]["rows"], 1_500_000)


if __name__ == "__main__":
    harness.main()
