"""JSON answers and stand files against the schemas that the program describes."""

import json
import subprocess
import tomllib

from jsonschema import Draft202012Validator

import harness


def schema(topic):
    text = json.loads(harness.run("describe", topic).stdout)
    Draft202012Validator.check_schema(text)
    return Draft202012Validator(text)


class Json(harness.Case):
    def faults(self, validator, value):
        return [f"{'/'.join(map(str, fault.path))}: {fault.message}" for fault in validator.iter_errors(value)][:5]

    def test_every_answer_to_every_example_is_valid(self):
        validator = schema("answer-schema")
        for example in harness.EXAMPLES:
            jobs = [job["name"] for job in tomllib.loads(example.read_text(encoding="utf-8"))["job"]]
            for call in (["check"], ["size"], ["size", "--all"], ["size", "--job", jobs[0]], ["plan"]):
                answer = json.loads(self.answered(*call, example, "--json"))
                self.assertEqual(self.faults(validator, answer), [], (call, example.name))

    def test_an_answer_that_refuses_is_valid(self):
        done = harness.run("size", "-", "--json", text="holdback = 1\n")
        self.assertEqual(self.faults(schema("answer-schema"), json.loads(done.stdout)), [])

    def test_a_hand_made_answer_with_everything_in_it_is_valid(self):
        answer = json.loads(subprocess.run([harness.SAMPLE], capture_output=True, check=True).stdout)
        validator = schema("answer-schema")
        self.assertEqual(self.faults(validator, answer), [])
        for part in ("check", "choice", "plan"):
            self.assertIn(part, answer)

    def test_the_schema_refuses_what_is_no_answer(self):
        answer = json.loads(subprocess.run([harness.SAMPLE], capture_output=True, check=True).stdout)
        validator = schema("answer-schema")
        limit = answer["choice"]["recommended"]["jobs"][0]["limits"][0]
        for key, wrong in (("state", "fine"), ("value", "much"), ("margin", None)):
            right = limit[key]
            limit[key] = wrong
            self.assertFalse(validator.is_valid(answer), key)
            limit[key] = right
        self.assertFalse(validator.is_valid(answer | {"more": 1}))
        self.assertFalse(validator.is_valid(answer | {"version": 2}))
        del limit["unit"]
        self.assertFalse(validator.is_valid(answer))

    def test_the_examples_are_valid_stand_files_and_a_wrong_key_is_not(self):
        validator = schema("schema")
        for example in harness.EXAMPLES:
            stand = tomllib.loads(example.read_text(encoding="utf-8"))
            self.assertEqual(self.faults(validator, stand), [], example.name)
            stand["line"]["top_sped"] = "250 m/min"
            self.assertFalse(validator.is_valid(stand), example.name)

    def test_units_change_the_text_but_not_the_json(self):
        example = harness.EXAMPLES[0]
        for command in ("check", "size", "plan"):
            self.assertEqual(self.answered(command, example, "--json"), self.answered(command, example, "--json", "--units", "us"))
            self.assertNotEqual(self.answered(command, example), self.answered(command, example, "--units", "us"))

    def test_one_thread_or_many_give_identical_bytes(self):
        for example in harness.EXAMPLES:
            one = self.answered("size", example, "--all", "--json", "--threads", "1")
            self.assertEqual(one, self.answered("size", example, "--all", "--json", "--threads", "4"))
            self.assertEqual(one, self.answered("size", example, "--all", "--json"))


if __name__ == "__main__":
    harness.main()
