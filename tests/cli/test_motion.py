"""The stand in motion by the command line: summaries, traces, strips, tunings, and what is refused."""

import csv
import json
import xml.etree.ElementTree as tree

import harness

STAND = next(example for example in harness.EXAMPLES if example.stem.endswith("film-in-motion"))
JOB = "clear film"
SVG = "{http://www.w3.org/2000/svg}"
SHORT = """
[[scenario]]
name = "short"
start_speed = "60 m/min"

[[scenario.event]]
do = "hold"
duration = "4 s"

[[scenario.event]]
do = "stop"
duration = "2 s"
"""


class Motion(harness.Case):
    def setUp(self):
        super().setUp()
        self.stand = self.file("stand.toml", STAND.read_text(encoding="utf-8") + SHORT)

    def simulate(self, *more, **how):
        return self.answered("simulate", self.stand, "--job", JOB, "--scenario", "short", *more, **how)

    def test_the_summary_tells_each_phase_and_the_verdict(self):
        text = self.simulate()
        for word in ["hold", "stop", "load cell", "scenario", "into brake and drag", "Cautions"]:
            self.assertIn(word, text)

    def test_json_holds_the_trace(self):
        run = json.loads(self.simulate("--json"))["simulation"]["runs"][0]
        trace = run["trace"]
        self.assertGreater(len(trace["time"]), 50)
        self.assertEqual({len(column) for column in trace.values()}, {len(trace["time"])})
        self.assertEqual(trace["time"], sorted(trace["time"]))
        # Within the window at the end of the hold; by the setpoint of the file.
        at = max(k for k, t in enumerate(trace["time"]) if t < 4)
        self.assertAlmostEqual(trace["tension"][at], 88, delta=0.12 * 88)

    def test_controls_side_by_side_best_first(self):
        runs = json.loads(self.simulate("--compare", "hand,diameter,dancer,loadcell", "--json"))["simulation"]["runs"]
        self.assertEqual({run["control"] for run in runs}, {"hand", "diameter", "dancer", "load cell"})
        order = {"holds": 0, "tight": 1, "fails": 2}
        self.assertEqual([order[run["state"]] for run in runs], sorted(order[run["state"]] for run in runs))

    def test_traces_become_csv_files_one_a_control(self):
        folder = self.folder / "run"
        self.simulate("--compare", "hand,loadcell", "--traces", folder)
        self.assertEqual(sorted(path.name for path in folder.iterdir()), ["trace-hand.csv", "trace-load-cell.csv"])
        with (folder / "trace-hand.csv").open(encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
        self.assertGreater(len(rows), 50)
        self.assertIn("tension [N]", rows[0])

    def test_us_units_change_the_text_and_not_the_result(self):
        self.assertIn("lbf", self.simulate("--units", "us"))
        self.assertEqual(self.simulate("--json"), self.simulate("--json", "--units", "us"))

    def test_strips_are_drawn(self):
        folder = self.folder / "figures"
        self.simulate("--compare", "hand,loadcell", "--svg", folder)
        names = sorted(path.name for path in folder.iterdir())
        self.assertEqual([name for name in names if name.startswith("comparison-")], ["comparison-clear-film.svg"])
        for path in folder.iterdir():
            self.assertEqual(tree.fromstring(path.read_bytes()).tag, SVG + "svg")

    def test_a_tuning_keeps_its_margins_and_is_the_one_that_a_run_takes(self):
        tuning = json.loads(self.answered("tune", self.stand, "--job", JOB, "--json"))["tuning"]
        best = tuning["loops"][0]
        self.assertGreaterEqual(best["least_gain_margin"], tuning["asked_gain_margin"] - 1e-6)
        self.assertGreaterEqual(best["least_phase_margin"], tuning["asked_phase_margin"] - 1e-6)
        # Written into the stand file, it gives the run that Holdback's own tuning gives.
        scheduled = next(loop for loop in tuning["loops"] if loop["schedule"] == "diameter")
        given = self.stand.read_text(encoding="utf-8").replace(
            'kind = "load cell"',
            f'kind = "load cell"\ngain = {scheduled["gain"]!r}\nintegral_time = "{scheduled["integral_time"]!r} s"')
        own = json.loads(self.simulate("--json"))["simulation"]["runs"][0]
        self.stand = self.file("given.toml", given)
        written = json.loads(self.simulate("--json"))["simulation"]["runs"][0]
        self.assertEqual(own["trace"]["tension"], written["trace"]["tension"])

    def test_a_tuning_is_shown_and_drawn(self):
        folder = self.folder / "figures"
        text = self.answered("tune", self.stand, "--job", JOB, "--svg", folder)
        self.assertIn("gain margin", text)
        self.assertIn("margins-clear-film.svg", [path.name for path in folder.iterdir()])

    def test_what_is_asked_wrongly_is_refused(self):
        self.assertIn("--job", self.refused("simulate", self.stand))
        self.assertIn("no such control", self.refused("simulate", self.stand, "--job", JOB, "--compare", "wizard").lower()
                      .replace("no control is called", "no such control"))
        self.assertIn("web break", self.refused("simulate", self.stand, "--job", JOB, "--scenario", "none"))
        bare = self.file("bare.toml", harness.EXAMPLES[0].read_text(encoding="utf-8"))
        message = self.refused("simulate", bare, "--job", "paper labels", "--compare", "dancer")
        self.assertIn("[dancer]", message)

    def test_progress_is_silent_without_a_terminal(self):
        done = harness.run("simulate", self.stand, "--job", JOB, "--scenario", "short")
        self.assertNotIn("%", done.stderr)


if __name__ == "__main__":
    harness.main()
