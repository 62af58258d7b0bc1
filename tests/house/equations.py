"""One name, three places: every public function of src/holdback/physics/*.hpp has a heading '### name' in
docs/method.md and a TEST of that suite or name in tests/unit/physics. Citations [@key] and docs/sources.bib agree."""

import re

import tree

NOT_CODE = re.compile(r'//[^\n]*|/\*.*?\*/|^[ \t]*#[^\n]*|"(?:\\.|[^"\\\n])*"', re.DOTALL | re.MULTILINE)
HEADING = re.compile(r"^###\s+`?(\w+)`?(.*)$", re.MULTILINE)
TEST = re.compile(r"\bTEST(?:_F|_P)?\(\s*(\w+)\s*,\s*(\w+)\s*\)")
CITED = re.compile(r"\[(@[^\]\n]*)\]")
BIB = re.compile(r"^\s*@\w+\s*\{\s*([^\s,]+)\s*,", re.MULTILINE)


def functions(header):
    """Names of the functions declared at namespace scope; 'namespace detail' is not public."""
    text = NOT_CODE.sub(" ", header)
    names, statement, open_namespaces, at = [], "", 0, 0
    while at < len(text):
        char = text[at]
        at += 1
        if char not in "{};":
            statement += char
            continue
        namespace = char == "{" and re.match(r"\s*(?:inline\s+)?namespace\b\s*([\w:]*)", statement)
        if namespace and "detail" not in namespace.group(1):
            open_namespaces += 1
        else:
            declared = re.match(r"[^(=]*?(\w+)\s*\(", re.sub(r"\[\[.*?\]\]", " ", statement))
            kind = re.match(r"\s*(template\s*<.*?>\s*)?(\w*)", statement, re.DOTALL).group(2)
            if declared and kind not in ("struct", "class", "enum", "using", "static_assert", "concept", "union"):
                if "operator" not in declared.group(0):
                    names.append(declared.group(1))
            if char == "{":  # skip the body, whatever it is
                depth = 1
                while depth and at < len(text):
                    depth += {"{": 1, "}": -1}.get(text[at], 0)
                    at += 1
        statement = ""
    return sorted(set(names))


def read(path):
    return path.read_text(encoding="utf-8") if path.is_file() else ""


def check(root):
    method = read(root / "docs/method.md")
    headings = HEADING.findall(method)
    tested = {name for path in root.glob("tests/unit/physics/*.cpp") for pair in TEST.findall(read(path)) for name in pair}
    faults, known = [], set()
    for header in sorted(root.glob("src/holdback/physics/*.hpp")):
        for name in functions(read(header)):
            known.add(name)
            place = f"{header.relative_to(root)}: {name}"
            if name not in {heading for heading, _ in headings}:
                faults.append(f"{place} has no heading '### {name}' in docs/method.md")
            if name not in tested:
                faults.append(f"{place} has no TEST of that name in tests/unit/physics")
    if not known:
        faults.append("src/holdback/physics: no public function found")
    elsewhere = "".join(read(path) for path in root.glob("src/holdback/*/*.hpp"))
    for name, rest in headings:
        single = not rest.strip() and re.fullmatch(r"[a-z][a-z0-9]*(_[a-z0-9]+)+", name)
        if single and name not in known and not re.search(rf"\b{name}\s*\(", elsewhere):
            faults.append(f"docs/method.md: '### {name}' names no function of src/holdback")
    return faults + citations(root)


def citations(root):
    """Keys cited in docs/, in headers and in tests/published, against docs/sources.bib."""
    pages = [*root.glob("docs/**/*.md"), *root.glob("src/holdback/**/*.hpp"), *root.glob("tests/published/**/*")]
    cited = {}
    for page in sorted(path for path in pages if path.is_file()):
        for group in CITED.findall(read(page)):
            for key in re.findall(r"@([\w:.-]*\w)", group):
                cited.setdefault(key, page.relative_to(root))
    entries = BIB.findall(read(root / "docs/sources.bib"))
    faults = [f"{page}: [@{key}] is not in docs/sources.bib" for key, page in cited.items() if key not in entries]
    faults += [f"docs/sources.bib: {key} is cited nowhere" for key in entries if key not in cited]
    return faults + [f"docs/sources.bib: {key} stands twice" for key in sorted(set(entries)) if entries.count(key) > 1]


if __name__ == "__main__":
    HEADER = """#pragma once
        namespace holdback::physics {
        struct Spin { double rate() const; };  // not_me(x)
        namespace detail { double hidden(double x); }
        constexpr double g = f(9.81);
        /// Brake torque [N·m]. [@smith2001, p. 3]
        [[nodiscard]] double brake_torque(double tension, double radius = std::max(1.0, 2.0));
        template <typename T> T twice(T x) { return 2 * x; }
        bool operator==(Spin, Spin);
        }"""
    SOUND = {"src/holdback/physics/torque.hpp": HEADER,
             "docs/method.md": "### brake_torque\nT = F r\n### `twice` of a value\n### Scope\n",
             "docs/sources.bib": "@book{smith2001,\n}\n",
             "tests/unit/physics/torque_test.cpp": "TEST(brake_torque, grows) {}\nTEST(torque, twice) {}\n"}
    assert functions(HEADER) == ["brake_torque", "twice"], functions(HEADER)
    tree.main(check, [
        (SOUND, None),
        (SOUND | {"docs/method.md": "### twice\n"}, "brake_torque has no heading"),
        (SOUND | {"docs/method.md": SOUND["docs/method.md"] + "### old_name\n"}, "old_name"),
        (SOUND | {"docs/method.md": SOUND["docs/method.md"] + "[@lost; @smith2001]\n"}, "@lost"),
        (SOUND | {"docs/sources.bib": "@book{smith2001,\n}\n@misc{idle,\n}\n"}, "idle is cited nowhere"),
        (SOUND | {"docs/sources.bib": "@book{smith2001,\n}\n@book{smith2001,\n}\n"}, "stands twice"),
        (SOUND | {"tests/unit/physics/torque_test.cpp": "TEST(torque, twice) {}\n"}, "brake_torque has no TEST"),
        ({}, "no public function"),
    ])
