"""Keeps ./run honest: help is the default and lists every job, a wrong job is refused with exit code 2, and a machine
that lacks what is needed is told what to do. Run on stand-ins for apt-get and dpkg-query; installs nothing."""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import tree

JOBS = {"demo", "test", "build", "wasm", "page", "bench", "format", "tidy", "asan", "coverage", "fuzz", "derive", "help"}


def run(*arguments, path=None):
    done = subprocess.run([tree.PROJECT / "run", *arguments], capture_output=True, text=True, stdin=subprocess.DEVNULL,
                          env=os.environ | ({"PATH": path} if path else {}))
    return done.returncode, done.stdout + done.stderr


def bare_machine(folder, stand_ins):
    """A PATH with the few tools that ./run itself uses and the given stand-ins {name: shell text}."""
    for tool in {"bash", "env", "dirname", "mkdir", "id", "tail"} - set(stand_ins):
        (folder / tool).symlink_to(shutil.which(tool))
    for name, text in stand_ins.items():
        (folder / name).write_text("#!/bin/sh\n" + text, encoding="utf-8")
        (folder / name).chmod(0o755)
    return str(folder)


def main():
    faults = []

    def expect(what, outcome, code, *words):
        if outcome[0] != code or not all(word in outcome[1] for word in words):
            faults.append(f"{what}: expected exit code {code} and {words}, got {outcome[0]}:\n{outcome[1]}")

    listed = run()[1].splitlines()[1:]
    if {line.split()[0] for line in listed if line.strip()} != JOBS:
        faults.append("./run lists: " + " | ".join(listed))
    expect("help", run("help"), 0, "demo", "test")
    expect("wrong job", run("dance"), 2, "dance", "usage")
    with tempfile.TemporaryDirectory() as folder:
        expect("no Debian", run("demo", path=bare_machine(Path(folder), {})), 3,
               "not a Debian machine", "libeigen3-dev", "Remedy")
    with tempfile.TemporaryDirectory() as folder:
        path = bare_machine(Path(folder), {"dpkg-query": "exit 1\n", "apt-get": "exit 1\n", "id": "echo 1000\n",
                                           "sudo": "exit 1\n"})
        expect("no rights", run("demo", path=path), 3, "neither root nor sudo", "apt-get install")
    with tempfile.TemporaryDirectory() as folder:
        path = bare_machine(Path(folder), {"dpkg-query": "exit 1\n", "id": "echo 0\n",
                                           "apt-get": "echo no network here; exit 100\n"})
        expect("no network", run("demo", path=path), 100, "no network here", "refresh the package lists", "Remedy")
    print("\n".join(faults) or "no fault found")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
