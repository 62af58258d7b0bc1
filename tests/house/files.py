"""Keeps files readable and the repository light: no source over 600 lines (a note from 400), no file over 1 MB, no mark
for unfinished work left behind."""

import re

import tree

LONGEST, LONG = 600, 400  # lines
HEAVIEST = 1_000_000  # bytes
SOURCES = {".hpp", ".cpp", ".py", ".mjs", ".ts", ".tsx", ".cmake"}
# Written in two halves, so that this file does not find itself.
DENIED = re.compile(r"\b(" + "|".join(["TO" "DO", "FIX" "ME", "XX" "X", "HA" "CK"]) + r")\b")


def check(root):
    faults = []
    for path in tree.files(root):
        name = path.relative_to(root)
        content = path.read_bytes()
        if len(content) > HEAVIEST:
            faults.append(f"{name}: {len(content)} bytes, more than {HEAVIEST}")
            continue
        try:
            lines = content.decode("utf-8").splitlines()
        except UnicodeDecodeError:
            if path.suffix in SOURCES | {".md", ".toml", ".json"}:
                faults.append(f"{name}: not UTF-8")
            continue
        if path.suffix in SOURCES and len(lines) > LONG:
            if len(lines) > LONGEST:
                faults.append(f"{name}: {len(lines)} lines, more than {LONGEST}; split it by topic")
            else:
                print(f"note: {name}: {len(lines)} lines; {LONGEST} is the end")
        for number, line in enumerate(lines, 1):
            word = DENIED.search(line)
            if word:
                faults.append(f"{name}:{number}: '{word.group()}': finish it, or say in docs/ what is left out and why")
    return faults


if __name__ == "__main__":
    tree.main(check, [
        ({"src/a.cpp": "int a;\n" * LONGEST, "notes.md": "all is done\n", "data.bin": "x" * HEAVIEST}, None),
        ({"src/a.cpp": "int a;\n" * (LONGEST + 1)}, f"more than {LONGEST}"),
        ({"data.bin": "x" * (HEAVIEST + 1)}, f"more than {HEAVIEST}"),
        ({"src/a.cpp": "// TO" "DO: later\n"}, "finish it"),
    ])
