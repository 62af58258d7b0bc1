"""Keeps the way in short and the links alive: README.md shows both commands before line 25, and every relative link in
every .md file leads to a file (and to a heading, where it names one)."""

import re
from urllib.parse import unquote

import tree

COMMANDS, BEFORE = ("./run demo", "./run test"), 25
FENCE = re.compile(r"^(```|~~~).*?^\1", re.DOTALL | re.MULTILINE)
CODE = re.compile(r"`[^`\n]*`")
LINK = re.compile(r"\[[^\]\n]*\]\(\s*<?([^)\s>]+)>?[^)\n]*\)")


def anchors(page):
    """The anchors of a page's headings, as code hosts make them: lower case, no punctuation, hyphens for spaces."""
    headings = re.findall(r"^#{1,6}\s+(.+?)\s*#*$", FENCE.sub("", page), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-") for heading in headings}


def check(root):
    faults = []
    readme = root / "README.md"
    top = readme.read_text(encoding="utf-8").splitlines()[:BEFORE - 1] if readme.is_file() else []
    faults += [f"README.md: '{command}' does not stand before line {BEFORE}"
               for command in COMMANDS if not any(command in line for line in top)]
    for page in tree.files(root, ".md"):
        text = page.read_text(encoding="utf-8")
        prose = CODE.sub(lambda code: " " * len(code.group()), FENCE.sub(lambda code: re.sub(r"[^\n]", " ", code.group()), text))
        for match in LINK.finditer(prose):
            target = match.group(1)
            if re.match(r"[a-z][a-z0-9+.-]*:", target):
                continue
            file, _, anchor = unquote(target).partition("#")
            aim = page if not file else (root / file[1:] if file.startswith("/") else page.parent / file)
            place = f"{page.relative_to(root)}:{prose.count(chr(10), 0, match.start()) + 1}"
            if not aim.exists():
                faults.append(f"{place}: {target} leads nowhere")
            elif anchor and aim.suffix == ".md" and anchor not in anchors(aim.read_text(encoding="utf-8")):
                faults.append(f"{place}: {target}: no such heading")
    return faults


if __name__ == "__main__":
    README = "# Name\n./run demo\n./run test\n[guide](docs/guide.md#first-steps) [site](https://example.org)\n"
    SOUND = {"README.md": README, "docs/guide.md": "## First steps\n```\n[not a link](nowhere)\n```\n`[nor](this)`\n"}
    tree.main(check, [
        (SOUND, None),
        (SOUND | {"README.md": "\n" * BEFORE + README}, "before line"),
        (SOUND | {"README.md": README + "[gone](docs/gone.md)\n"}, "leads nowhere"),
        (SOUND | {"docs/guide.md": "## Later steps\n"}, "no such heading"),
        ({}, "before line"),
    ])
