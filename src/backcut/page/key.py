"""How to read the floor: every mark this page uses, drawn by the same renderer, with its name."""

from __future__ import annotations

from backcut.page.words import section
from backcut.picture.lines import zigzag_path
from backcut.picture.scene import Line, Mark, Primitive, to_svg
from backcut.picture.show import ArrowKind, Show, Stance

_BEND = "M-150 30C-60-50 60-40 135 10"
_FLAT = "M-150 0H135"


def _entries(show: Show) -> list[tuple[list[Primitive], str]]:
    kinds = {(arrow.kind, arrow.lit) for moment in show.moments for arrow in moment.arrows}
    stances = {stance for moment in show.moments for stance in moment.guards.values()}
    near = {spot.near for moment in show.moments for spot in moment.open_spots}
    drawn = {kind for kind, _ in kinds}
    lit = any(lit for _, lit in kinds)
    out: list[tuple[list[Primitive], str]] = [
        ([Mark("attacker", 0, 0, text="4")], "attacker"),
        ([Mark("holder", 0, 0, text="3"), Mark("ball", 0, 0, shift_cm=(47, -38))], "has the ball"),
    ]
    if show.timeline.defenders:
        out.append(([Mark("arms", 0, 0, 90, "X3")], "defender on the ball"))
        out.append(([Mark("plain", 0, 0, 90, "X5")], "defender, facing right"))
    if Stance.DENIES in stances:
        out.append(([Mark("denies", 0, 0, 90, "X2")], "denies"))
    if stances & {Stance.HELPS, Stance.JUMPED}:
        out.append(
            (
                [Mark("hand-free", 0, 0, -90), Mark("plain", 0, 0, 90, "X4")],
                "a hand to the ball: helps, or has jumped to it",
            )
        )
    if lit:
        out.append(([Line("lit", _BEND), Line("run hot", _BEND)], "the move of the sentence that won"))
    lines: list[tuple[ArrowKind, list[Primitive], str]] = [
        (ArrowKind.CUT, [Line("run", _BEND)], "cut"),
        (ArrowKind.FILL, [Line("fill", _BEND)], "fill or come out"),
        (ArrowKind.PASS, [Line("pass", _FLAT)], "pass"),
        (ArrowKind.SHUT, [Line("shut", "M-150 0H85"), Line("hand", "M100-26V26")], "pass shut by a hand"),
        (ArrowKind.DRIBBLE, [Line("dribble", zigzag_path([(-150.0, 0.0), (140.0, 0.0)]))], "dribble"),
        (ArrowKind.SCREEN, [Line("screen", "M-150 0H120")], "screen"),
        (ArrowKind.HAND_OFF, [Line("fill", _FLAT), Line("bars", "M-8-36V36M14-36V36")], "hand-off"),
    ]
    out += [(picture, name) for kind, picture, name in lines if kind in drawn]
    out.append(
        ([Line("trail", "M-150 30C-60-50 40-40 90-4"), Mark("attacker", 110, 10, text="1")], "where 1 came from")
    )
    if show.sentences:
        out.append(([Mark("flag", 0, 0, text="C")], "letter of the sentence behind a move"))
    if False in near:
        out.append(([Mark("spot", 0, 0)], "empty spot"))
    if True in near:
        out.append(([Mark("near", 0, 0)], "empty, one pass from the ball"))
    return out


def key(show: Show) -> str:
    """The key, at the foot of the page."""
    rows = "".join(
        f'<li><svg class="half" viewBox="-190 -80 380 160" aria-hidden="true">{to_svg(picture)}</svg>{name}</li>'
        for picture, name in _entries(show)
    )
    return section("key below", "key", "How to read the floor", f"<ul>{rows}</ul>")
