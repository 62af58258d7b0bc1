"""Figures as files: the real program writes them, an XML parser reads them."""

import json
import re
import xml.etree.ElementTree as tree

import harness

SVG = "{http://www.w3.org/2000/svg}"
UNITS = {"bar": "psi", "N·m": "in·lbf", "mm": "in", "°C": "°F", "N": "lbf", "m/min": "ft/min"}


class Svg(harness.Case):
    def figures(self, *arguments, folder="figures", codes=(0, 1)):
        """{file name: root} of what a call writes, and what it says on standard error."""
        place = self.folder / folder
        done = harness.run(*arguments, "--svg", place)
        self.assertIn(done.returncode, codes, done.stderr)
        return {path.name: tree.fromstring(path.read_bytes()) for path in sorted(place.iterdir())}, done

    def texts(self, root):
        return [element.text for element in root.iter(SVG + "text")]

    def test_size_writes_the_mix_and_one_job(self):
        for example in harness.EXAMPLES:
            found, done = self.figures("size", example, folder=example.stem)
            kinds = {name.split("-")[0].removesuffix(".svg") for name in found}
            self.assertLessEqual({"stand", "coverage", "torque", "temperature", "pressure"}, kinds, example)
            self.assertIn(f"{len(found)} figures in ", done.stderr)
            self.assertNotEqual(done.stdout, "")
            for name, root in found.items():
                self.assertRegex(name, r"^[a-z0-9-]+\.svg$")
                self.assertEqual(root.tag, SVG + "svg")
                self.assertRegex(root.get("viewBox"), r"^0 0 [0-9.]+ [0-9.]+$")
                self.assertTrue(root.findtext(SVG + "title"), name)
                self.assertTrue(root.findtext(SVG + "desc"), name)
                self.assertNotIn("nan", " ".join(value for each in root.iter() for value in each.attrib.values()))

    def test_titles_name_the_job_and_the_fit(self):
        example = harness.EXAMPLES[0]
        job = json.loads(self.answered("size", example, "--json"))["choice"]["recommended"]["jobs"][0]["job"]
        found, _ = self.figures("size", example, "--job", job)
        torque = next(root for name, root in found.items() if name.startswith("torque-"))
        self.assertIn(job, torque.findtext(SVG + "title"))
        self.assertIn("Torque over the roll", self.texts(torque))

    def test_the_matrix_has_every_job_with_its_margin(self):
        example = harness.EXAMPLES[0]
        jobs = json.loads(self.answered("size", example, "--json"))["choice"]["recommended"]["jobs"]
        found, _ = self.figures("size", example)
        words = found["coverage.svg"].findtext(SVG + "desc")
        for job in jobs:
            self.assertIn(job["job"], words)
            self.assertIn(job["state"], words)
        everything, _ = self.figures("size", example, "--all", folder="all")
        self.assertIn("Least in hand on each fit that was tried, best first", self.texts(everything["coverage.svg"]))

    def test_plan_writes_one_figure_a_job(self):
        for example in harness.EXAMPLES:
            jobs = json.loads(self.answered("plan", example, "--json"))["plan"]["jobs"]
            found, _ = self.figures("plan", example, folder="plan-" + example.stem)
            self.assertEqual(len(found), min(len(jobs), 50))
            titles = [root.findtext(SVG + "title") for root in found.values()]
            for job in jobs[:50]:
                self.assertTrue(any(job["job"] in title for title in titles), job["job"])

    def test_si_and_us_differ_only_in_numbers_and_units(self):
        example = harness.EXAMPLES[0]
        for command in ("size", "plan"):
            si, _ = self.figures(command, example, folder=command + "-si")
            us, _ = self.figures(command, example, "--units", "us", folder=command + "-us")
            self.assertEqual(sorted(si), sorted(us))
            for name in si:
                axes = [text for text in self.texts(si[name]) if re.fullmatch(r"[a-z ]+ \[.+\]", text)]
                others = [text for text in self.texts(us[name]) if re.fullmatch(r"[a-z ]+ \[.+\]", text)]
                self.assertEqual(len(axes), len(others), name)
                for axis, other in zip(axes, others):
                    word, unit = re.fullmatch(r"([a-z ]+) \[(.+)\]", axis).groups()
                    self.assertEqual(other, f"{word} [{UNITS.get(unit, unit)}]")
                self.assertEqual(*(each[name].findtext(SVG + "title").split(":")[0] for each in (si, us)))
            if "coverage.svg" in si:  # shares alone: nothing in it has a unit
                self.assertEqual(tree.tostring(si["coverage.svg"]), tree.tostring(us["coverage.svg"]))

    def test_the_same_call_writes_the_same_bytes(self):
        for folder in ("first", "second"):
            self.figures("size", harness.EXAMPLES[0], folder=folder)
        for path in (self.folder / "first").iterdir():
            self.assertEqual(path.read_bytes(), (self.folder / "second" / path.name).read_bytes())

    def test_a_folder_is_made_with_those_above_it_and_files_are_replaced(self):
        deep = self.folder / "a" / "b"
        for _ in range(2):
            self.answered("plan", harness.EXAMPLES[0], "--svg", deep)
        names = [path.name for path in deep.iterdir()]
        self.assertTrue(names)
        self.assertTrue(all(name.endswith(".svg") for name in names), names)  # nothing half-written is left

    def test_the_answer_is_the_same_beside_the_figures(self):
        for way in ("--json", "--csv"):
            self.assertEqual(self.answered("size", harness.EXAMPLES[0], way),
                             self.answered("size", harness.EXAMPLES[0], way, "--svg", self.folder / "figures"))

    def test_a_folder_that_cannot_be_made_is_refused(self):
        in_the_way = self.file("taken", "a file\n")
        self.assertIn("cannot be made", self.refused("size", harness.EXAMPLES[0], "--svg", in_the_way))
        self.assertIn("cannot be made", self.refused("plan", harness.EXAMPLES[0], "--svg", in_the_way / "below"))
        self.assertEqual(in_the_way.read_text(), "a file\n")

    def test_bad_input_makes_no_folder(self):
        stand = self.file("stand.toml", "nothing = 1\n")
        self.refused("size", stand, "--svg", self.folder / "figures")
        self.assertFalse((self.folder / "figures").exists())

    def test_check_and_example_take_no_svg(self):
        self.assertIn("unknown option --svg", self.refused("check", harness.EXAMPLES[0], "--svg", self.folder))


if __name__ == "__main__":
    harness.main()
