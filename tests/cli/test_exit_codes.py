"""The exit code is the verdict: 0 holds, 1 a limit fails, 2 bad input."""

import json

import harness


class ExitCodes(harness.Case):
    def test_the_code_is_the_outcome_that_the_answer_states(self):
        numbers = {"holds": 0, "fails": 1}
        for example in harness.EXAMPLES:
            for command in ("check", "size", "plan"):
                done = harness.run(command, example, "--json")
                self.assertEqual(done.returncode, numbers[json.loads(done.stdout)["outcome"]], (command, example.name))

    def test_a_covered_mix_is_0_and_the_same_mix_with_stops_that_no_brake_can_make_is_1(self):
        example = harness.EXAMPLES[0]
        self.assertEqual(harness.run("size", example).returncode, 0, "the first example is meant to be covered")
        text = example.read_text(encoding="utf-8")
        sudden = text.replace('emergency_stop_time = "4 s"', 'emergency_stop_time = "0.1 s"')
        self.assertNotEqual(sudden, text)
        done = harness.run("size", "-", text=sudden)
        self.assertEqual(done.returncode, 1, done.stderr)
        self.assertIn("fails", done.stdout)

    def test_bad_input_is_2_with_file_line_and_field(self):
        stand = self.file("stand.toml", harness.EXAMPLES[0].read_text(encoding="utf-8").replace("top_speed", "top_sped"))
        line = 1 + stand.read_text(encoding="utf-8").splitlines().index('top_sped = "250 m/min"')
        message = self.refused("check", stand)
        self.assertIn(f"stand.toml:{line}:", message)
        self.assertIn("top_speed", message)
        self.assertIn("error", message)

    def test_with_json_the_problems_of_the_input_are_in_the_answer(self):
        stand = self.file("stand.toml", "holdback = 1\n[stand]\ndrag = 5\n")
        done = harness.run("size", stand, "--json")
        self.assertEqual(done.returncode, 2)
        self.assertEqual(done.stderr, "")
        answer = json.loads(done.stdout)
        self.assertEqual(answer["outcome"], "bad_input")
        self.assertIn("stand.drag", [problem["field"] for problem in answer["problems"]])

    def test_a_file_that_cannot_be_read_is_2_with_the_reason(self):
        self.assertIn("No such file", self.refused("size", self.folder / "nowhere.toml"))
        self.assertIn("folder", self.refused("size", self.folder))
        done = harness.run("size", self.folder / "nowhere.toml", "--json")
        self.assertEqual(done.returncode, 2)
        self.assertIn("No such file", json.loads(done.stdout)["problems"][0]["what"]["text"])

    def test_bytes_that_are_no_text_are_2(self):
        stand = self.folder / "stand.toml"
        stand.write_bytes(bytes(range(256)) * 4)
        self.assertIn("error", self.refused("size", stand))


if __name__ == "__main__":
    harness.main()
