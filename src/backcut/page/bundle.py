"""The board's modules joined into one script, so that the page is one file and needs no build.

Only what the board uses is understood: `import { a, b } from "./file.js";` on one line, `export` before a declaration,
and comments on lines of their own (`//`, or a JSDoc block), which are left out. Anything else raises, so that nothing
is joined wrongly in silence.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from backcut.errors import BackcutError

IMPORT = re.compile(r'^import \{ (?P<names>[\w$, ]+) \} from "\./(?P<file>[\w-]+\.js)";$')
DECLARED = re.compile(r"^(?:export )?(?:async )?(?:function\*?|const|let|class) +(?P<name>[\w$]+)")


class BundleError(BackcutError):
    """Modules that cannot be joined: a missing file, a circle, a name used twice."""


def _order(modules: Mapping[str, str], first: str) -> list[str]:
    done: list[str] = []
    open_files: list[str] = []

    def visit(name: str, wanted_by: str) -> None:
        if name in done:
            return
        if name in open_files:
            raise BundleError(f"{wanted_by}: {name} imports it back, in a circle; move what both need to a third file.")
        if name not in modules:
            raise BundleError(f"{wanted_by}: there is no {name}; the board has {', '.join(sorted(modules))}.")
        open_files.append(name)
        for line in modules[name].splitlines():
            if found := IMPORT.match(line):
                visit(found["file"], name)
        open_files.pop()
        done.append(name)

    visit(first, "the page")
    return done


def _lines(name: str, text: str) -> Iterator[tuple[int, str]]:
    """The numbered lines of a module that run: no empty ones, no comments on lines of their own."""
    opened = 0
    for number, line in enumerate(text.splitlines(), start=1):
        bare = line.strip()
        starts = not opened and bare.startswith("/**") and "*/" not in bare[:-2]
        if opened or starts:
            opened = opened or number
            if "*/" in bare:
                if not bare.endswith("*/"):
                    raise BundleError(f"{name}, line {number}: begin a new line after the comment.")
                opened = 0
        elif bare and not bare.startswith("//"):
            yield number, line
    if opened:
        raise BundleError(f"{name}, line {opened}: the comment that begins here has no end.")


def joined(modules: Mapping[str, str], first: str) -> str:
    """All modules that `first` needs, dependencies first, without import and export.

    Raises: BundleError for a missing file, a circle of imports, a name declared twice, an unknown form of import, or
    a comment that shares a line with code or has no end.
    """
    owner: dict[str, str] = {}
    out: list[str] = []
    for name in _order(modules, first):
        for number, line in _lines(name, modules[name]):
            if IMPORT.match(line):
                continue
            if line.startswith("import") or (line.startswith("export") and not DECLARED.match(line)):
                raise BundleError(
                    f'{name}, line {number}: write import {{ name }} from "./file.js"; or export before a name.'
                )
            if found := DECLARED.match(line):
                if found["name"] in owner:
                    raise BundleError(
                        f"{name}, line {number}: {found['name']} is already declared in {owner[found['name']]}."
                    )
                owner[found["name"]] = name
            out.append(line.removeprefix("export ").rstrip())
    return "\n".join(out) + "\n"
