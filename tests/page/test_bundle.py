"""The board's modules become one script, and nothing is joined wrongly in silence."""

from __future__ import annotations

import pytest

from backcut.page.bundle import BundleError, joined
from backcut.page.document import script


def test_what_is_needed_comes_first_and_only_once() -> None:
    modules = {
        "a.js": 'import { b } from "./b.js";\nimport { c } from "./c.js";\nb(c);\n',
        "b.js": 'import { c } from "./c.js";\nexport function b(x) {\n  return c + x;\n}\n',
        "c.js": "export const c = 1;\n",
        "unused.js": "export const unused = 1;\n",
    }
    assert joined(modules, "a.js") == "const c = 1;\nfunction b(x) {\n  return c + x;\n}\nb(c);\n"


@pytest.mark.parametrize(
    ("modules", "word"),
    [
        ({"a.js": 'import { b } from "./b.js";\n'}, "no b.js"),
        ({"a.js": 'import { b } from "./b.js";\n', "b.js": 'import { a } from "./a.js";\n'}, "circle"),
        ({"a.js": 'import { b } from "./b.js";\nconst b = 2;\n', "b.js": "export const b = 1;\n"}, "already declared"),
        ({"a.js": 'import b from "./b.js";\n'}, "write import"),
        ({"a.js": "export default 3;\n"}, "write import"),
        ({"a.js": 'import { b } from "https://somewhere.example/b.js";\n'}, "write import"),
        ({"a.js": "/**\n * A comment\n */ run();\n"}, "line 3: begin a new line"),
        ({"a.js": "run();\n/** A comment\nrun();\n"}, "line 2: the comment that begins here has no end"),
    ],
)
def test_what_cannot_be_joined_is_named(modules: dict[str, str], word: str) -> None:
    with pytest.raises(BundleError, match=word):
        joined(modules, "a.js")


def test_what_is_said_of_the_types_stays_behind() -> None:
    module = (
        '/** @typedef {import("./types.js").Story} Story */\n'
        "/**\n * export default {\n * @param {Story} story\n */\n"
        "export function tell(story) {\n"
        "  /** @type {string} */\n"
        "  const said = /** @type {string} */ (story.said);\n"
        "  /** @type {Story} */ (story).told = true;\n"
        "  return said;\n"
        "}\n"
    )
    assert joined({"a.js": module}, "a.js") == (
        "function tell(story) {\n"
        "  const said = /** @type {string} */ (story.said);\n"
        "  /** @type {Story} */ (story).told = true;\n"
        "  return said;\n"
        "}\n"
    )


def test_the_board_is_one_script_without_imports() -> None:
    code = script()
    assert "import " not in code
    assert "export " not in code
    assert code.rstrip().endswith("begin(document);")
    assert "@param" not in code
    assert "</" not in code
