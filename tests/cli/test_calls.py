"""What may be called, and what a wrong call is told."""

import harness

EXAMPLE = harness.EXAMPLES[0]


class Calls(harness.Case):
    def test_each_command_has_help_with_examples_and_exit_codes(self):
        for command in harness.COMMANDS:
            text = self.answered(command, "--help", codes=(0,))
            for part in ("usage: holdback " + command, "Options:", "\nExamples:\n  ", "Exit codes:", "--help"):
                self.assertIn(part, text, command)
            self.assertLessEqual(max(map(len, text.splitlines())), 100)

    def test_the_examples_in_the_help_are_calls_that_the_program_takes(self):
        for command in harness.COMMANDS:
            text = self.answered(command, "--help")
            calls = [line.strip() for line in text.split("Examples:")[1].splitlines() if line.strip().startswith("holdback ")]
            self.assertTrue(calls, command)
            for call in calls:
                options = [word.split("=")[0] for word in call.split("|")[0].split() if word.startswith("--")]
                for option in options:
                    self.assertIn(option, text.split("Examples:")[0], call)

    def test_the_overview_names_every_command(self):
        text = self.answered("--help", codes=(0,))
        for command in harness.COMMANDS:
            self.assertRegex(text, rf"(?m)^  {command} ")

    def test_without_a_command_the_overview_is_shown_as_a_fault(self):
        self.assertIn("usage: holdback COMMAND", self.refused())

    def test_version_is_one_line(self):
        self.assertRegex(self.answered("--version"), r"^holdback \d+\.\d+\.\d+\n$")

    def test_a_wrong_option_is_told_the_near_one(self):
        self.assertIn("did you mean --json?", self.refused("size", EXAMPLE, "--jsn"))
        self.assertIn("did you mean --tolerance?", self.refused("plan", EXAMPLE, "--tolerence=8%"))
        self.assertIn("unknown option --zzz", self.refused("size", EXAMPLE, "--zzz"))

    def test_a_wrong_command_is_told_the_near_one(self):
        self.assertIn("did you mean size?", self.refused("sise", EXAMPLE))

    def test_a_wrong_value_is_told_what_is_accepted(self):
        self.assertIn("si, us", self.refused("size", EXAMPLE, "--units", "metric"))
        self.assertIn("whole number", self.refused("size", EXAMPLE, "--threads", "many"))
        self.assertIn("--tolerance", self.refused("plan", EXAMPLE, "--tolerance", "wide"))
        self.assertIn("completion", self.refused("describe", "complection"))

    def test_a_missing_value_or_argument_is_named(self):
        self.assertIn("FILE", self.refused("size"))
        self.assertIn("--job", self.refused("size", EXAMPLE, "--job"))
        self.assertIn("one argument too many", self.refused("size", EXAMPLE, EXAMPLE))
        self.assertIn("SHELL", self.refused("describe", "completion"))

    def test_json_and_csv_exclude_each_other(self):
        self.assertIn("exclude", self.refused("size", EXAMPLE, "--json", "--csv"))

    def test_an_unknown_job_brake_or_grade_is_refused(self):
        self.assertIn("--job", self.refused("size", EXAMPLE, "--job", "no such job"))
        self.assertIn("brake", self.refused("size", EXAMPLE, "--brake", "no such brake"))


if __name__ == "__main__":
    harness.main()
