"""What the house checks share: the files of the project, and a command line with a proof that the check can fail.

A check is a function root -> list of faults (text, one line each). Its self-test plants a fault in a folder of its own
and says whether the check finds it.
"""

import subprocess
import sys
import tempfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
SKIPPED = {".git", "build", "node_modules", "__pycache__"}


def files(root, *suffixes):
    """The project's own files under root, sorted: what git tracks or would add; every file where there is no git."""
    try:
        listed = subprocess.run(
            ["git", "-c", "safe.directory=*", "-C", str(root), "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
            capture_output=True, check=True, text=True).stdout.split("\0")
        found = [root / name for name in listed if name]
    except (OSError, subprocess.CalledProcessError):
        found = [path for path in root.rglob("*") if not SKIPPED & set(path.relative_to(root).parts)]
    return sorted(path for path in found if path.is_file() and (not suffixes or path.suffix in suffixes))


def plant(root, texts):
    """Writes {relative path: text} under root."""
    for name, text in texts.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def main(check, plants):
    """Runs the check on the project; with --self-test, on each planted tree: (texts, word that the fault must contain),
    where None for the word says that the tree is sound."""
    if sys.argv[1:] == ["--self-test"]:
        faults = []
        for texts, word in plants:
            with tempfile.TemporaryDirectory() as folder:
                plant(Path(folder), texts)
                found = check(Path(folder))
            if word is None and found:
                faults.append(f"sound tree {sorted(texts)} is called faulty: {found}")
            if word is not None and not any(word in fault for fault in found):
                faults.append(f"the planted fault '{word}' was not found; found: {found}")
        done = f"{len(plants)} planted trees judged rightly"
    else:
        faults = check(PROJECT)
        done = "no fault found"
    for fault in faults:
        print(fault)
    print(f"{len(faults)} faults" if faults else done)
    sys.exit(1 if faults else 0)
