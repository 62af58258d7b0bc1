"""Files in and out: standard input, --out whole or not at all, examples, a reader that goes away."""

import os
import subprocess

import harness

EXAMPLE = harness.EXAMPLES[0]


class Files(harness.Case):
    def test_a_stand_on_standard_input_is_answered_as_from_its_file(self):
        text = EXAMPLE.read_text(encoding="utf-8")
        self.assertEqual(self.answered("size", "-", text=text), self.answered("size", EXAMPLE))

    def test_a_fault_on_standard_input_says_where(self):
        self.assertIn("standard input:", self.refused("check", "-", text="holdback = 1\n[stand]\ndrag = 5\n"))

    def test_out_holds_what_standard_output_would(self):
        out = self.folder / "answer.json"
        done = harness.run("size", EXAMPLE, "--json", "--out", out)
        self.assertEqual(done.stdout, "")
        self.assertEqual(out.read_text(encoding="utf-8"), self.answered("size", EXAMPLE, "--json"))
        self.assertEqual(os.listdir(self.folder), ["answer.json"])

    def test_out_replaces_the_file_as_a_whole_so_that_an_open_one_stays(self):
        out = self.file("answer.txt", "old answer\n")
        with open(out, encoding="utf-8") as open_before:
            harness.run("size", EXAMPLE, "--out", out)
            self.assertEqual(open_before.read(), "old answer\n")
        self.assertIn("Recommended fit", out.read_text(encoding="utf-8"))

    def test_out_through_a_link_changes_the_file_and_keeps_the_link(self):
        real = self.file("real.txt", "old answer\n")
        link = self.folder / "link.txt"
        link.symlink_to(real)
        harness.run("size", EXAMPLE, "--out", link)
        self.assertTrue(link.is_symlink())
        self.assertIn("Recommended fit", real.read_text(encoding="utf-8"))

    def test_out_into_a_missing_folder_is_refused_and_leaves_nothing(self):
        self.assertIn("cannot be written", self.refused("size", EXAMPLE, "--out", self.folder / "missing" / "answer.txt"))
        self.assertEqual(os.listdir(self.folder), [])

    def test_out_never_replaces_the_file_that_is_read(self):
        stand = self.file("stand.toml", EXAMPLE.read_text(encoding="utf-8"))
        self.assertIn("would replace", self.refused("size", stand, "--out", self.folder / "." / "stand.toml"))
        self.assertEqual(stand.read_text(encoding="utf-8"), EXAMPLE.read_text(encoding="utf-8"))

    def test_bad_input_leaves_the_file_of_out_as_it_was(self):
        out = self.file("answer.txt", "old answer\n")
        self.refused("size", self.file("bad.toml", "holdback = 1\n"), "--out", out)
        self.assertEqual(out.read_text(encoding="utf-8"), "old answer\n")

    def test_an_example_is_the_file_in_the_tree_and_is_listed(self):
        listed = self.answered("example")
        for example in harness.EXAMPLES:
            name = example.stem.split("-", 1)[1]
            self.assertRegex(listed, rf"(?m)^{name}  .*\w")
            self.assertEqual(self.answered("example", name), example.read_text(encoding="utf-8"))

    def test_an_example_replaces_a_file_only_when_told_to(self):
        out = self.file("stand.toml", "my own work\n")
        self.assertIn("--force", self.refused("example", "label-slitter", "--out", out))
        self.assertEqual(out.read_text(encoding="utf-8"), "my own work\n")
        self.assertEqual(harness.run("example", "label-slitter", "--out", out, "--force").returncode, 0)
        self.assertEqual(out.read_text(encoding="utf-8"), EXAMPLE.read_text(encoding="utf-8"))

    def test_an_unknown_example_is_told_the_near_one(self):
        self.assertIn("did you mean label-slitter?", self.refused("example", "label-sliter"))

    def test_a_reader_that_goes_away_is_met_in_silence(self):
        child = subprocess.Popen([harness.PROGRAM, "size", EXAMPLE, "--all", "--json"], stdout=subprocess.PIPE,
                                 stderr=subprocess.PIPE, env=harness.ENVIRONMENT)
        child.stdout.close()
        self.assertEqual(child.stderr.read(), b"")
        self.assertIn(child.wait(timeout=60), (0, 1))
        child.stderr.close()

    def test_a_full_disk_is_not_taken_for_success(self):
        with open("/dev/full", "wb") as full:
            done = subprocess.run([harness.PROGRAM, "size", EXAMPLE], stdout=full, stderr=subprocess.PIPE, env=harness.ENVIRONMENT)
        self.assertEqual(done.returncode, 3)
        self.assertIn(b"cannot be written", done.stderr)

    def test_more_jobs_come_from_a_table(self):
        others = ("-readings", "-log")
        tables = [path for path in sorted((harness.PROJECT / "examples").glob("*.csv")) if not path.stem.endswith(others)]
        self.assertTrue(tables, "an example with a table of jobs")
        for table in tables:
            number = table.name.split("-")[0]
            stand = next(path for path in harness.EXAMPLES if path.name.startswith(number))
            few = self.answered("check", stand, "--csv").count("\r\n")
            more = self.answered("check", stand, "--csv", "--jobs", table).count("\r\n")
            self.assertGreater(more, few)


if __name__ == "__main__":
    harness.main()
