"""Runs the program under test and holds what comes out. Paths come from CTest by the environment."""

import os
import re
import subprocess
import tempfile
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
PROGRAM = os.environ["HOLDBACK_PROGRAM"]
SAMPLE = os.environ["HOLDBACK_SAMPLE"]
EXAMPLES = sorted((PROJECT / "examples").glob("*.toml"))
COMMANDS = ["check", "size", "plan", "simulate", "tune", "measure", "fit", "diagnose", "history", "papers", "page", "example", "describe"]
COLOUR = re.compile(r"\x1b\[[0-9;]*m")

# A quiet machine of our own: no units, no colour wishes from whoever runs the tests.
ENVIRONMENT = {"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "LANG": "C.UTF-8", "TERM": "xterm-256color"}


def run(*arguments, text="", environment=None, folder=None):
    """The finished program: returncode, stdout, stderr; line ends as they are."""
    done = subprocess.run([PROGRAM, *map(str, arguments)], input=text.encode(), capture_output=True,
                          env=ENVIRONMENT | (environment or {}), cwd=folder, timeout=60)
    done.stdout, done.stderr = done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
    return done


class Case(unittest.TestCase):
    """A test with a folder of its own."""

    maxDiff = 4000

    def setUp(self):
        holder = tempfile.TemporaryDirectory()
        self.addCleanup(holder.cleanup)
        self.folder = Path(holder.name)

    def file(self, name, text):
        path = self.folder / name
        path.write_text(text, encoding="utf-8")
        return path

    def answered(self, *arguments, codes=(0, 1), **how):
        """What a call prints that must end well."""
        done = run(*arguments, **how)
        self.assertIn(done.returncode, codes, f"{arguments}: {done.stderr}")
        self.assertNotEqual(done.stdout, "", arguments)
        return done.stdout

    def refused(self, *arguments, **how):
        """What a call says that must be refused: exit 2, nothing on standard output."""
        done = run(*arguments, **how)
        self.assertEqual(done.returncode, 2, f"{arguments}: {done.stdout}{done.stderr}")
        self.assertEqual(done.stdout, "", arguments)
        return done.stderr


def main():
    unittest.main(verbosity=1)
