"""The style of the marks for whoever draws paper and clips: no variables, no sums, no fonts inside."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files

from backcut.page.document import static

#: The tokens of black ink on white paper (the look): no colour, no grey but the lane.
BLACK = (
    "--page:#FFF;--leaf:#FFF;--floor:#FFF;--lane:#EEE;--ink:#000;--soft:#333;--line:#808080;--edge:#555;--rule:#AAA;"
    "--mark:#D6D6D6;--on-mark:#000;"
)
LIGHTS = ("day", "night", "print")
CUTS = ("roman-400", "roman-500", "roman-700", "italic-400", "italic-500")


@cache
def tokens(light: str) -> dict[str, str]:
    """The colours of a light by name, such as "ink". Raises: KeyError for another light than day, night and print."""
    sheet = static("style.css").decode()
    day, night = re.findall(r"^:root(?:\[data-light=night\])? \{(.*?)\n\}", sheet, flags=re.S | re.M)
    said = day + {"day": "", "night": night, "print": BLACK}[light]
    return {name: value.strip() for name, value in re.findall(r"--([\w-]+):([^;]+);", said)}


def marks_style() -> str:
    """The rules of the page's style for floor and marks, as they stand there."""
    sheet = static("style.css").decode()
    return sheet[sheet.index("/* the floor;") : sheet.index(".caption {")]


@cache
def plain_style(light: str, size: float = 1.0, say: float = 1.0) -> str:
    """The same rules with every value in its place; `size` is the factor of the marks, `say` that of the lettering."""
    known = tokens(light) | {"k": f"{size:g}", "say": f"{say:g}", "text": "Literata", "shape": "1"}
    rules = re.sub(r"var\(--([\w-]+)\)", lambda name: known[name[1]], marks_style())
    rules = re.sub(r"calc\(([\d.]+)px \* ([\d.]+)\)", lambda m: f"{float(m[1]) * float(m[2]):g}px", rules)
    drawn = [rule for rule in rules.splitlines() if rule.startswith((".", "#")) and not rule.startswith(".court")]
    return "\n".join([*drawn, ".away { display: none }"])


def font_files() -> list[str]:
    """The fonts for such a drawing, as paths."""
    return [str(files("backcut.page").joinpath("static", "fonts", f"literata-{cut}.ttf")) for cut in CUTS]
