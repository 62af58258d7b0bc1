"""Keeps the derived files true: what `holdback describe <topic>` prints is what lies in the tree. With --write, writes
them (./run derive). With --self-test, proves that a stale file is found."""

import argparse
import subprocess
import sys
import tempfile
from pathlib import Path

import tree

DERIVED = {"schema": "schema/stand.schema.json",
           "answer-schema": "schema/answer.schema.json",
           "file-format": "docs/file-format.md"}


def described(program, topic):
    return subprocess.run([program, "describe", topic], capture_output=True, check=True).stdout


def write(root, program):
    for topic, name in DERIVED.items():
        path = root / name
        text = described(program, topic)
        path.parent.mkdir(parents=True, exist_ok=True)
        if not path.exists() or path.read_bytes() != text:
            path.write_bytes(text)
            print(f"wrote {name}")


def check(root, program):
    return [f"{name} is not what 'holdback describe {topic}' prints; remedy: ./run derive"
            for topic, name in DERIVED.items()
            if not (root / name).exists() or (root / name).read_bytes() != described(program, topic)]


def self_test(program):
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        empty = len(check(root, program)) == len(DERIVED)
        write(root, program)
        fresh = not check(root, program)
        (root / DERIVED["schema"]).write_text("{}\n", encoding="utf-8")
        stale = len(check(root, program)) == 1
    return [] if empty and fresh and stale else [f"missing found: {empty}, fresh passes: {fresh}, stale found: {stale}"]


if __name__ == "__main__":
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--program", required=True)
    options.add_argument("--write", action="store_true")
    options.add_argument("--self-test", action="store_true")
    chosen = options.parse_args()
    if chosen.write:
        write(tree.PROJECT, chosen.program)
        sys.exit(0)
    faults = self_test(chosen.program) if chosen.self_test else check(tree.PROJECT, chosen.program)
    print("\n".join(faults) or "no fault found")
    sys.exit(1 if faults else 0)
