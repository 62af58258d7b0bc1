"""Papers as PDFs: the real program writes them; poppler and qpdf read them. What they say is what `papers --json` and
`size --json` say."""

import json
import re
import subprocess
import sys
import unicodedata
import xml.etree.ElementTree as tree

import harness

sys.path.insert(0, str(harness.PROJECT / "tests" / "papers"))
import look  # noqa: E402  the check of the pictures

DATE = "2026-05-03"


def poppler(*call):
    return subprocess.run(call, check=True, capture_output=True).stdout.decode("utf-8")


def letters(text):
    """What is left of a text when lines were broken and signs composed in another way."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text))


def words_in_figures(paper):
    """Every text that stands in a figure of a paper: its SVG is the scene that the PDF draws."""
    for block in paper["blocks"]:
        if block["block"] == "figure":
            for element in tree.fromstring(block["svg"]).iter("{http://www.w3.org/2000/svg}text"):
                yield "".join(element.itertext())


def words_of(value):
    """Every text that stands on a paper as JSON tells it, figures left out."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, list):
        for one in value:
            yield from words_of(one)
    elif isinstance(value, dict):
        kind = value.get("block")
        for key, one in value.items():
            if key not in ("block", "tone", "state", "svg", "description", "id", "kind", "file", "date") and not (
                    kind == "figure" and key != "svg"):
                yield from words_of(one)


class Papers(harness.Case):
    def papers(self, *arguments, folder="papers", codes=(0, 1)):
        """{file name: path} of what a call writes, and its JSON."""
        place = self.folder / folder
        done = harness.run("papers", *arguments, "--out", place, "--json")
        self.assertIn(done.returncode, codes, done.stderr)
        return {path.name: path for path in sorted(place.iterdir())}, json.loads(done.stdout)

    def text(self, pdf):
        return poppler("pdftotext", "-raw", pdf, "-")

    def test_every_example_gives_papers_that_are_sound_to_look_at(self):
        for units in ("si", "us"):
            for example in harness.EXAMPLES:
                with self.subTest(example=example.name, units=units):
                    files, _ = self.papers(example, "--units", units, "--date", DATE, folder=f"{example.stem}-{units}")
                    self.assertLessEqual({"selection-report.pdf", "maintenance-card.pdf", "commissioning-sheet.pdf",
                                          "commissioning-sheet.csv"}, set(files))
                    for name, path in files.items():
                        if path.suffix != ".pdf":
                            continue
                        subprocess.run(["qpdf", "--check", path], check=True, capture_output=True)
                        self.assertEqual(look.look(path), [], name)

    def test_the_papers_say_what_the_json_says(self):
        example = harness.EXAMPLES[0]
        files, answer = self.papers(example, "--date", DATE)
        by_file = {}
        for paper in answer["papers"]:
            name = "set-up-cards.pdf" if paper["kind"] == "setup_card" else paper["file"] + ".pdf"
            by_file.setdefault(name, []).append(paper)
        self.assertEqual(set(by_file), {name for name in files if name.endswith(".pdf")})
        for name, papers in by_file.items():
            found = letters(self.text(files[name]))
            for paper in papers:
                for words in [*words_of(paper), *words_in_figures(paper)]:
                    for word in words.split():
                        self.assertIn(letters(word), found, f"{name}: {words}")

    def test_the_report_has_the_numbers_of_size(self):
        example = harness.EXAMPLES[0]
        files, _ = self.papers(example, "--only", "report")
        found = letters(self.text(files["selection-report.pdf"]))
        choice = json.loads(self.answered("size", example, "--json"))["choice"]
        for job in choice["recommended"]["jobs"]:
            self.assertIn(letters(job["job"]), found)
            self.assertIn(job["state"], found)
            self.assertIn(f"{job['hottest'] - 273.15:.0f}", found)
        self.assertIn(letters(choice["recommended"]["fit"]["brake"]), found)

    def test_a_card_takes_one_page_and_names_its_job(self):
        for example in harness.EXAMPLES:
            files, answer = self.papers(example, "--only", "cards", folder=example.stem)
            self.assertEqual(len(files), 1)
            (path,) = files.values()
            pages = int(re.search(r"Pages:\s+(\d+)", poppler("pdfinfo", path)).group(1))
            self.assertEqual(pages, len(answer["papers"]), example)
            for number, paper in enumerate(answer["papers"], 1):
                page = poppler("pdftotext", "-raw", "-f", str(number), "-l", str(number), path, "-")
                self.assertIn(letters(paper["title"]), letters(page))

    def test_fonts_are_embedded_and_the_metadata_is_of_the_stand(self):
        files, _ = self.papers(harness.EXAMPLES[0], "--date", DATE)
        for name in ("selection-report.pdf", "maintenance-card.pdf"):
            for line in poppler("pdffonts", files[name]).splitlines()[2:]:
                self.assertRegex(line, r"\byes yes\b", name)
        told = poppler("pdfinfo", files["selection-report.pdf"])
        self.assertIn("Selection report", told)
        self.assertIn("Holdback", told)

    def test_paper_follows_the_units_or_what_is_asked(self):
        for arguments, size in ((("--units", "si"), "595"), (("--units", "us"), "612"),
                                (("--units", "us", "--paper", "a4"), "595")):
            files, _ = self.papers(harness.EXAMPLES[0], "--only", "maintenance", *arguments, folder="-".join(arguments))
            self.assertRegex(poppler("pdfinfo", files["maintenance-card.pdf"]), rf"Page size:\s+{size}")

    def test_the_same_call_gives_the_same_bytes(self):
        first, _ = self.papers(harness.EXAMPLES[0], "--date", DATE, folder="first")
        second, _ = self.papers(harness.EXAMPLES[0], "--date", DATE, "--threads", "1", folder="second")
        for name, path in first.items():
            self.assertEqual(path.read_bytes(), second[name].read_bytes(), name)

    def test_the_commissioning_table_comes_back_through_fit(self):
        example = harness.EXAMPLES[0]
        files, _ = self.papers(example, "--only", "commissioning")
        done = harness.run("fit", files["commissioning-sheet.csv"], "--stand", example)
        self.assertEqual(done.returncode, 2, "nothing is filled in yet")
        self.assertIn("commissioning-sheet.csv", done.stderr)

    def test_changes_are_listed_with_what_they_do(self):
        example = harness.EXAMPLES[0]
        before = example.read_text(encoding="utf-8")
        after = re.sub(r'(full_diameter\s*=\s*)"[^"]+"', r'\1"900 mm"', before, count=1)
        self.assertNotEqual(before, after)
        files, _ = self.papers(self.file("new.toml", after), "--before", example, "--only", "changes")
        self.assertIn("900 mm", re.sub(r"\s+", " ", self.text(files["change-list.pdf"])))

    def test_two_fits_stand_side_by_side(self):
        example = harness.EXAMPLES[0]
        choice = json.loads(self.answered("size", example, "--json"))["choice"]
        other = choice["next"]["fit"]
        files, _ = self.papers(example, "--only", "comparison", "--other-brake", other["brake"], "--other-grade",
                               other["grade"], "--other-brakes", other["brakes"])
        found = letters(self.text(files["comparison.pdf"]))
        for fit in (choice["recommended"]["fit"], other):
            self.assertIn(letters(fit["grade"]), found)

    def test_calls_that_cannot_be_done_are_refused(self):
        example = harness.EXAMPLES[0]
        self.assertIn("--out", self.refused("papers", example))
        self.assertIn("posters", self.refused("papers", example, "--out", self.folder, "--only", "posters"))
        self.assertIn("--before", self.refused("papers", example, "--out", self.folder, "--only", "changes"))
        self.assertIn("2026-05-03", self.refused("papers", example, "--out", self.folder, "--date", "3.5.26"))
        blocked = self.file("blocked", "")
        self.assertIn("blocked", self.refused("papers", example, "--out", blocked, "--only", "maintenance"))
        self.assertEqual(blocked.read_text(), "")

    def test_bad_input_writes_nothing(self):
        bad = self.file("bad.toml", 'format = 1\n[stand]\ntitle = "x"\n')
        place = self.folder / "none"
        done = harness.run("papers", bad, "--out", place)
        self.assertEqual(done.returncode, 2)
        self.assertFalse(place.exists())


if __name__ == "__main__":
    harness.main()
