"""The pictures on paper: at most four arrows, the federation's marks, everybody where the motion has him."""

from __future__ import annotations

import math
import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from tests.teaching.books import BOOKS, book, every, shown

from backcut.engine.play import play
from backcut.engine.words import action_words
from backcut.motion.timeline import pose
from backcut.offence.action import letter
from backcut.offence.moves import moves_from_text
from backcut.picture.apart import APART_CM
from backcut.picture.marks import HEADS
from backcut.picture.story import show
from backcut.teaching.sheets.contrast import contrast
from backcut.teaching.sheets.decisions import ROWS, parted, told
from backcut.teaching.sheets.handout import drawn
from backcut.teaching.sheets.picture import MOST_ARROWS, SHEET, ink, is_ball, paper_still

SVG = "{http://www.w3.org/2000/svg}"
ARROWS = {"run", "fill", "pass", "shut", "dribble", "screen"}


def arrows(svg: str) -> list[ElementTree.Element]:
    """The lines of action of a picture; the two edges of a road and a hand belong to their line."""
    found = ElementTree.fromstring(svg).iter(f"{SVG}path")
    return [path for path in found if path.get("class", "").split(" ")[0] in ARROWS]


@pytest.mark.parametrize(("name", "rank"), every())
def test_a_picture_has_at_most_four_arrows_and_the_sentence_is_lit(name: str, rank: int) -> None:
    one = told(shown(name)[rank])
    assert 2 <= len(one.pictures) <= ROWS
    for picture in one.pictures:
        made = drawn(one, picture)
        assert len(arrows(made.svg)) == made.arrows <= MOST_ARROWS
    own = str(letter(rank))
    key = one.decision.moment
    example = shown(name)[rank]
    if example.action.moves:
        lit = [arrow for arrow in key.arrows if arrow.lit]
        assert {arrow.letter for arrow in lit} == {own}
        assert example.player in {arrow.player for arrow in lit}
        assert "case in" in drawn(one, one.decision).svg
    else:
        assert one.decision.tabs == ((example.player, own),)
        assert re.search(rf'class="letter on"[^>]*>{own}<', drawn(one, one.decision).svg)


@pytest.mark.parametrize(("name", "rank"), every())
def test_a_moment_with_more_arrows_becomes_pictures_that_hold_them_all(name: str, rank: int) -> None:
    for moment in told(shown(name)[rank]).show.moments:
        pictures = parted(moment, rank)
        assert all(len(picture.arrows) <= MOST_ARROWS for picture in pictures)
        kept = [(arrow.kind, arrow.player, arrow.to_player) for picture in pictures for arrow in picture.arrows]
        assert sorted(kept, key=str) == sorted(((a.kind, a.player, a.to_player) for a in moment.arrows), key=str)
        assert [is_ball(arrow) for arrow in pictures[0].arrows] == sorted(
            (is_ball(arrow) for arrow in pictures[0].arrows), reverse=True
        )
        assert not any(is_ball(arrow) for picture in pictures[1:] for arrow in picture.arrows)


def _rules() -> dict[str, dict[str, str]]:
    """The style of each class on paper, the last one said holding."""
    out: dict[str, dict[str, str]] = {}
    for heads, body in re.findall(r"([^{}]+)\{([^}]*)\}", ink(SHEET)):
        values = dict(re.findall(r"([\w-]+):\s*([^;]+)", body))
        for head in heads.split(","):
            name = head.strip().split("*/")[-1].strip()
            out.setdefault(name, {}).update({part: value.strip() for part, value in values.items()})
    return out


def test_the_marks_are_the_federations() -> None:
    """World coaches' manual 3.1: run an arrow line, pass dotted, dribble zigzag, screen ending in a bar across the way.

    The variants of ours: passes dashed, attackers in circles, the ball a circle round the number and a dot.
    """
    rules = _rules()
    for solid in (".run", ".fill", ".dribble", ".screen", ".case"):
        assert rules[solid]["stroke"] == "#000"
        assert "stroke-dasharray" not in rules[solid]
    on, off = map(float, re.findall(r"[\d.]+", rules[".pass"]["stroke-dasharray"]))
    assert on > off > 0
    assert rules[".screen"]["marker-end"] == "url(#head-screen)"
    assert HEADS["screen"][3] == '<path class="bar" d="M0-9V9"/>'  # square to the way, which runs along x
    assert rules[".run"]["marker-end"] == "url(#head-run)"
    assert rules[".fill"]["marker-end"] == "url(#head-fill)"


def _still(name: str, moves: str, place: int = 0) -> str:
    one = book(name)
    steps = play(one, one.start(), moves_from_text(moves))
    whole = show(one, steps)
    return paper_still(whole, parted(whole.moments[place])[0]).svg


def _turns(path: str) -> int:
    """How often a way of straight pieces changes from left to right."""
    points = [complex(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path)]
    steps = [b - a for a, b in pairwise(points)]
    signs = [(a.conjugate() * b).imag > 0 for a, b in pairwise(steps)]
    return sum(a != b for a, b in pairwise(signs))


def test_a_dribble_is_a_zigzag_and_a_pass_is_straight() -> None:
    dribble = next(p for p in arrows(_still("school-team", "dribble 1>LW")) if p.get("class") == "dribble")
    assert _turns(dribble.get("d", "")) >= 6
    passed = next(p for p in arrows(_still("school-team", "1>3")) if p.get("class") == "pass")
    assert re.fullmatch(r"M-?\d+ -?\d+L-?\d+ -?\d+", passed.get("d", ""))


def test_a_screen_ends_in_a_bar_and_a_denied_pass_at_a_hand() -> None:
    whole = told(shown("four-out-school-team")[6])
    assert any(path.get("class") == "screen" for path in arrows(drawn(whole, whole.decision).svg))
    denied = _still("school-team", "deny 3")
    assert any(path.get("class") == "shut" for path in arrows(denied))
    assert 'class="hand"' in denied
    assert 'href="#m-denies"' in denied  # the one filled defender
    assert ">X3<" in denied


def test_everybody_is_drawn_as_a_number_in_a_circle_the_holder_with_a_second_ring_and_the_ball() -> None:
    svg = _still("school-team", "1>3")
    assert svg.count('href="#m-attacker"') == 4
    assert svg.count('href="#m-holder"') == 1
    assert svg.count('href="#m-ball"') == 1
    numbers = re.findall(r'class="no"[^>]*>(\d)<', svg)
    assert sorted(numbers) == ["1", "2", "3", "4", "5"]


def test_defenders_without_a_say_are_left_out() -> None:
    assert "X" not in re.sub(r"<style>.*?</style>", "", _still("school-team", "1>3"), flags=re.S).replace("</", "")


@pytest.mark.parametrize("name", BOOKS)
def test_nobody_is_drawn_further_from_his_place_than_a_mark_may_be_pushed(name: str) -> None:
    """The look allows 40 cm on paper; coordinates are whole centimetres."""
    for example in shown(name).values():
        one = told(example)
        for picture in one.pictures:
            at = pose(one.show.timeline, picture.moment.t_s).players
            svg = drawn(one, picture).svg
            marks = re.findall(
                r'translate\((-?\d+) (-?\d+)\)"><g class="m"><use href="#m-(?:attacker|holder)"/>'
                r'<text class="no" y="19">(\d)<',
                svg,
            )
            assert len(marks) == len(at)
            for x, y, number in marks:
                true = at[int(number)]
                assert math.dist((float(x), float(y)), (true[0] * 100, true[1] * 100)) <= APART_CM + 1.0


@pytest.mark.parametrize("name", BOOKS)
def test_nothing_of_a_picture_is_grey(name: str) -> None:
    for example in shown(name).values():
        one = told(example)
        svg = drawn(one, one.decision).svg
        root = ElementTree.fromstring(svg)
        symbols = {one.get("id"): one for one in root.iter(f"{SVG}g") if one.get("id")}
        drawn_now = [one for part in root if part.tag != f"{SVG}defs" for one in part.iter()]
        drawn_now += [part for one in drawn_now if one.tag == f"{SVG}use" for part in symbols[one.get("href", "")[1:]]]
        used = {c for one in drawn_now for c in (one.get("class") or "").split()}
        assert {"line", "disc", "no"} <= used
        rules = _rules()
        for cls in used:
            for value in (rules.get(f".{cls}", {}).get(part) for part in ("fill", "stroke")):
                assert value in (None, "none", "#000", "#FFF", "inherit"), cls


@pytest.mark.parametrize(("name", "rank"), every())
def test_the_picture_that_only_looks_like_it_is_answered_as_the_book_says(name: str, rank: int) -> None:
    example = shown(name)[rank]
    said = contrast(example)
    if not said or len(example.possession.steps) > 1:
        return
    move = "sag" if "sags off" in said else "deny"
    (step,) = play(example.book, example.possession.start, moves_from_text(f"{move} {example.player}"))
    answers = [a for beat in step.beats for a in beat.decision.actions if a.player == example.player]
    assert said.endswith(f": {example.player} {action_words(answers[0])}.")
    assert (answers[0].kind, answers[0].target) != (example.action.kind, example.action.target)


def test_beside_a_denial_stands_the_defender_who_sags() -> None:
    assert contrast(shown("school-team")[2]) == "But when X3 sags off 3: 3 holds, left wing."
    assert contrast(shown("school-team")[8]) == "But when X2 denies 2: 2 back cuts."
    assert contrast(shown("first-month")[0]) == ""
