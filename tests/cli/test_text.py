"""The text as a person reads it: wide enough, in their units, coloured only where colour is wanted."""

import os
import pty
import tomllib

import harness


def in_terminal(*arguments, environment=None):
    """What the program writes to a terminal."""
    pid, terminal = pty.fork()
    if pid == 0:
        os.execve(harness.PROGRAM, [harness.PROGRAM, *map(str, arguments)], harness.ENVIRONMENT | (environment or {}))
    written = b""
    while True:
        try:
            chunk = os.read(terminal, 65536)
        except OSError:
            break
        if not chunk:
            break
        written += chunk
    os.close(terminal)
    os.waitpid(pid, 0)
    return written.decode("utf-8")


class Text(harness.Case):
    def calls(self):
        for example in harness.EXAMPLES:
            jobs = [job["name"] for job in tomllib.loads(example.read_text(encoding="utf-8"))["job"]]
            for call in (["check"], ["size"], ["size", "--all"], ["size", "--job", jobs[0]], ["plan"]):
                yield [*call, example]

    def test_no_line_is_wider_than_100_columns_in_either_system(self):
        for call in self.calls():
            for system in ("si", "us"):
                for line in self.answered(*call, "--units", system).splitlines():
                    self.assertLessEqual(len(line), 100, (call, line))

    def test_no_value_is_unknown_to_itself(self):
        for call in self.calls():
            text = self.answered(*call)
            for word in ("nan", "inf ", "∞", "undefined", "{0}", "{1}"):
                self.assertNotIn(word, text, call)

    def test_size_names_the_fit_the_jobs_and_their_state(self):
        for example in harness.EXAMPLES:
            text = self.answered("size", example)
            for part in ("Recommended fit", "Why: ", "Jobs on this fit", "pressure", "[bar]", "hottest", "[°C]", "binding limit", "Cautions"):
                self.assertIn(part, text, example.name)
            self.assertRegex(text, r"[⠀-⣿]{3}", "the picture")

    def test_a_failing_job_stands_under_what_falls_out(self):
        for example in harness.EXAMPLES:
            done = harness.run("size", example)
            self.assertEqual(done.returncode == 1, "What falls out" in done.stdout, example.name)
            self.assertEqual(done.returncode == 1, " fails " in done.stdout, example.name)

    def test_units_by_option_and_by_environment_are_the_same_and_the_option_wins(self):
        example = harness.EXAMPLES[0]
        us = self.answered("size", example, "--units", "us")
        self.assertIn("[psi]", us)
        self.assertNotIn("bar]", us)
        self.assertEqual(self.answered("size", example, environment={"HOLDBACK_UNITS": "us"}), us)
        self.assertEqual(self.answered("size", example, "--units", "si", environment={"HOLDBACK_UNITS": "us"}),
                         self.answered("size", example))
        self.assertIn("HOLDBACK_UNITS", self.refused("size", example, environment={"HOLDBACK_UNITS": "ell"}))

    def test_colour_is_only_for_a_terminal(self):
        example = harness.EXAMPLES[0]
        self.assertNotIn("\x1b", self.answered("size", example))
        self.assertIn("\x1b[", in_terminal("size", example))
        self.assertNotIn("\x1b", in_terminal("size", example, environment={"NO_COLOR": "1"}))
        self.assertNotIn("\x1b", in_terminal("size", example, environment={"TERM": "dumb"}))
        self.assertNotIn("\x1b", in_terminal("size", example, "--colour", "never"))

    def test_colour_on_demand_changes_no_word(self):
        example = harness.EXAMPLES[0]
        coloured = self.answered("size", example, "--colour", "always", environment={"NO_COLOR": "1"})
        self.assertIn("\x1b[", coloured)
        self.assertEqual(harness.COLOUR.sub("", coloured), self.answered("size", example))

    def test_a_plan_holds_the_automatic_table_and_the_hand_card(self):
        for example in harness.EXAMPLES:
            text = self.answered("plan", example)
            self.assertIn("For automatic control", text)
            self.assertIn("By hand, tension within ±", text)
        self.assertIn("±8", self.answered("plan", harness.EXAMPLES[0], "--tolerance", "8%"))


if __name__ == "__main__":
    harness.main()
