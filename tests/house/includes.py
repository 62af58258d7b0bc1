"""Keeps the arrows one-way: a folder of src/holdback includes itself and the folders named after SEES in its
CMakeLists.txt, nothing else; the arrows form no cycle; apps/ include only what hosts may see."""

import re

import tree

LAYER = re.compile(r"^\s*holdback_layer\(\s*(\w+)(?:\s+SEES\s+([\w\s]+?))?(?:\s+FAST\s+[\w\s.]+)?\s*\)", re.MULTILINE)
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
HOSTS_SEE = {"api", "papers", "report", "files", "draw", "results", "model", "units"}


def arrows(root):
    """{folder: the folders it may include}"""
    seen = {}
    for lists in sorted(root.glob("src/holdback/*/CMakeLists.txt")):
        for name, sees in LAYER.findall(lists.read_text(encoding="utf-8")):
            seen[name] = set(sees.split())
    return seen


def cycle(seen):
    """One cycle of arrows as a list of folders, or None."""
    state = {}

    def visit(name, path):
        if state.get(name) == "done":
            return None
        if name in path:
            return path[path.index(name):] + [name]
        for other in sorted(seen.get(name, ())):
            found = visit(other, path + [name])
            if found:
                return found
        state[name] = "done"
        return None

    return next((found for name in sorted(seen) if (found := visit(name, []))), None)


def check(root):
    seen = arrows(root)
    faults = [] if seen else ["src/holdback: no holdback_layer() line found"]
    found = cycle(seen)
    if found:
        faults.append("src/holdback: the arrows go round: " + " -> ".join(found))
    sources = [path for path in tree.files(root, ".hpp", ".cpp") if path.relative_to(root).parts[0] in ("src", "apps")]
    for path in sources:
        parts = path.relative_to(root).parts
        core = parts[:2] == ("src", "holdback") and len(parts) > 3
        folder = parts[2] if core else parts[0]
        if core and folder not in seen:
            faults.append(f"src/holdback/{folder}: has sources but no holdback_layer() line")
            continue
        allowed = seen[folder] | {folder} if core else HOSTS_SEE
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            match = INCLUDE.match(line)
            if not match:
                continue
            quote, target = match.groups()
            place = f"{path.relative_to(root)}:{number}"
            if target.startswith("holdback/"):
                if quote == "<":
                    faults.append(f"{place}: our own headers stand in quotes: {target}")
                if target.split("/")[1] not in allowed:
                    faults.append(f"{place}: {folder} includes {target}, but sees only {', '.join(sorted(allowed))}")
            elif quote == '"' and (core or ".." in target):
                faults.append(f'{place}: name our headers from the top, "holdback/…": {target}')
    return faults


if __name__ == "__main__":
    GROUND = {"src/holdback/model/CMakeLists.txt": "holdback_layer(model)\n",
              "src/holdback/physics/CMakeLists.txt": "holdback_layer(physics SEES model\n  FAST roll.cpp)\n",
              "src/holdback/api/CMakeLists.txt": "holdback_layer(api SEES physics\n  model)\n",
              "src/holdback/model/web.hpp": "#include <vector>\n",
              "src/holdback/physics/roll.cpp": '#include "holdback/model/web.hpp"\n#include "holdback/physics/roll.hpp"\n',
              "apps/cli/main.cpp": '#include "command.hpp"\n#include "holdback/api/answer.hpp"\n'}
    tree.main(check, [
        (GROUND, None),
        (GROUND | {"src/holdback/model/web.hpp": '#include "holdback/physics/roll.hpp"\n'}, "model includes"),
        (GROUND | {"src/holdback/model/web.hpp": '#include <holdback/model/roll.hpp>\n'}, "in quotes"),
        (GROUND | {"src/holdback/model/web.hpp": '#include "../physics/roll.hpp"\n'}, "from the top"),
        (GROUND | {"apps/cli/main.cpp": '#include "holdback/physics/roll.hpp"\n'}, "apps includes"),
        (GROUND | {"src/holdback/model/CMakeLists.txt": "holdback_layer(model SEES api)\n"}, "go round"),
        (GROUND | {"src/holdback/odd/odd.hpp": "\n"}, "no holdback_layer"),
        ({}, "no holdback_layer"),
    ])
