"""The court and the marks as SVG."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from backcut.court.courts import COURTS, court
from backcut.picture.floor import floor
from backcut.picture.marks import HEADS, SYMBOLS, defs
from backcut.picture.moment import turn_deg
from backcut.picture.scene import Line, Mark, Word, to_svg


@pytest.mark.parametrize("name", list(COURTS))
def test_every_court_can_be_drawn(name: str) -> None:
    record = COURTS[name]
    drawn = floor(record, "denied from the arc")
    root = ET.fromstring(drawn.svg)
    assert len(root.findall("path[@class='line']")) > 4
    assert drawn.room.right == pytest.approx((record.half_width_m + record.line_width.m) * 100)
    assert (root.find("path[@class='teeth']") is not None) == record.has_arc


def test_the_fiba_arc_is_painted_from_6_75_m_inward() -> None:
    # FIBA rules, article 2: the outer edge of the arc at 6.75 m, lines 5 cm wide: the middle of the paint at 672.5 cm
    assert "A672.5 672.5" in floor(court("fiba")).svg


def test_no_teeth_without_a_denial_mark() -> None:
    assert "teeth" not in floor(court("fiba")).svg


@pytest.mark.parametrize(("heading", "way"), [(0.0, (0.0, 1.0)), (90.0, (1.0, 0.0)), (225.0, (-0.7071, -0.7071))])
def test_a_plate_points_where_the_defender_faces(heading: float, way: tuple[float, float]) -> None:
    turn = math.radians(turn_deg(heading))  # the plate is drawn pointing up the page, SVG turns clockwise
    assert (math.sin(turn), -math.cos(turn)) == pytest.approx(way, abs=1e-3)


def test_symbols_and_heads_are_defined_once_each() -> None:
    root = ET.fromstring(defs())
    ids = [node.attrib["id"] for node in root]
    assert sorted(ids) == sorted([f"m-{name}" for name in SYMBOLS] + [f"head-{name}" for name in HEADS])


def test_only_the_plate_turns_and_its_number_stays_upright() -> None:
    (node,) = ET.fromstring(f"<svg>{to_svg([Mark('denies', 110, 706, 66, 'X2')])}</svg>")
    use, text = node[0]
    assert node.attrib["transform"] == "translate(110 706)"
    assert use.attrib["transform"] == "rotate(66)"
    assert "transform" not in text.attrib
    assert text.text == "X2"


def test_words_of_a_book_cannot_become_markup() -> None:
    svg = to_svg([Mark("flag", 0, 0, text="<", word="a & b"), Word("say", 0, 0, "<script>"), Line("run", "M0 0L1 1")])
    assert "<script>" not in svg
    assert [node.text for node in ET.fromstring(f"<svg>{svg}</svg>").iter("text")] == ["<", "a & b", "<script>"]
