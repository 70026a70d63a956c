"""The style for paper and clips holds every value in its place, and a drawer without a browser draws the same marks."""

from __future__ import annotations

import re

import pytest
import resvg_py

from backcut.page.plain import LIGHTS, font_files, plain_style, tokens
from backcut.picture.marks import SYMBOLS, defs


@pytest.mark.parametrize("light", LIGHTS)
def test_nothing_is_left_that_a_plain_drawer_cannot_read(light: str) -> None:
    style = plain_style(light, 1.36)
    assert "var(" not in style
    assert "calc(" not in style
    assert "container" not in style
    assert "scale(1.36)" in style


def test_print_is_black_on_white_and_the_lane_the_only_grey_that_fills() -> None:
    black = tokens("print")
    assert (black["ink"], black["page"], black["lane"]) == ("#000", "#FFF", "#EEE")
    for colour in re.findall(r"#[0-9A-Fa-f]{3,6}\b", plain_style("print")):
        digits = colour[1:]
        parts = digits if len(digits) == 3 else [digits[i : i + 2] for i in (0, 2, 4)]
        if len(digits) in (3, 6):
            assert len(set(parts)) == 1, colour


def test_another_light_there_is_not() -> None:
    with pytest.raises(KeyError):
        tokens("dusk")


@pytest.mark.parametrize("name", [name for name in SYMBOLS if name != "glow"])
def test_every_mark_is_drawn_without_a_browser(name: str) -> None:
    """By resvg, a reference renderer of SVG from the package registry."""
    drawn = (
        '<svg xmlns="http://www.w3.org/2000/svg" class="half" viewBox="-100 -100 200 200" width="200" height="200">'
        f'<style>{plain_style("print")}</style>{defs()}<g class="m"><use href="#m-{name}"/></g></svg>'
    )
    empty = resvg_py.svg_to_bytes(svg_string=drawn.replace(f"#m-{name}", "#none"), background="#FFF")
    png = resvg_py.svg_to_bytes(svg_string=drawn, background="#FFF", font_files=font_files(), skip_system_fonts=True)
    assert bytes(png).startswith(b"\x89PNG")
    assert bytes(png) != bytes(empty)
