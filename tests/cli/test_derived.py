"""What the program describes of itself: man page and completions, from the same table as the parser."""

import re
import shutil
import subprocess

import harness


def completed(line):
    """What bash offers at the end of the line."""
    words = line.split(" ")
    script = f"""source <({harness.PROGRAM} describe completion bash)
        compopt() {{ :; }}
        COMP_WORDS=({' '.join(repr(word) for word in words)}); COMP_CWORD={len(words) - 1}
        _holdback; printf '%s\\n' "${{COMPREPLY[@]}}" """
    done = subprocess.run(["bash", "--norc", "-c", script], capture_output=True, text=True, check=True, cwd=harness.PROJECT)
    return done.stdout.split(), done.stderr


class Derived(harness.Case):
    def test_the_man_page_is_set_without_a_warning(self):
        page = self.folder / "holdback.1"
        page.write_text(self.answered("describe", "man"), encoding="utf-8")
        done = subprocess.run(["man", "--warnings", "-E", "UTF-8", "-l", "-Tutf8", str(page)], capture_output=True, text=True,
                              env=harness.ENVIRONMENT | {"MANWIDTH": "90"})
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        text = re.sub(r".\x08", "", done.stdout)
        for part in ("NAME", "SYNOPSIS", "EXIT STATUS", "EXAMPLES", "holdback size FILE", "HOLDBACK_UNITS"):
            self.assertIn(part, text)

    def test_the_man_page_names_every_option_of_every_command(self):
        page = self.answered("describe", "man").replace("\\-", "-")
        for command in harness.COMMANDS:
            options = re.findall(r"^  (--[a-z-]+)", self.answered(command, "--help"), re.MULTILINE)
            self.assertTrue(options)
            for option in options:
                self.assertIn(option, page, command)

    def test_bash_offers_commands_options_words_and_files(self):
        for line, expected in (("holdback ", "size"), ("holdback si", "size"), ("holdback size --j", "--job"),
                               ("holdback size stand.toml --units ", "us"), ("holdback describe ", "answer-schema"),
                               ("holdback example l", "label-slitter"), ("holdback size READ", "README.md"),
                               ("holdback plan --tol", "--tolerance")):
            offered, complaint = completed(line)
            self.assertIn(expected, offered, line)
            self.assertEqual(complaint, "")
        self.assertNotIn("plan", completed("holdback si")[0])

    def test_the_bash_completion_offers_every_option_that_the_help_names(self):
        for command in harness.COMMANDS:
            offered, _ = completed(f"holdback {command} --")
            for option in re.findall(r"^  (--[a-z-]+)", self.answered(command, "--help"), re.MULTILINE):
                self.assertIn(option, offered, command)

    def test_the_zsh_completion_is_read_by_zsh(self):
        script = self.answered("describe", "completion", "zsh")
        self.assertTrue(script.startswith("#compdef holdback\n"))
        for command in harness.COMMANDS:
            self.assertIn(f"    {command})\n", script)
        if shutil.which("zsh"):
            done = subprocess.run(["zsh", "-n", "/dev/stdin"], input=script, capture_output=True, text=True)
            self.assertEqual((done.returncode, done.stderr), (0, ""))


if __name__ == "__main__":
    harness.main()
