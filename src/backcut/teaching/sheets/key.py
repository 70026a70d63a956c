"""The key of the marks, each drawn by the one renderer, with its words."""

from __future__ import annotations

from backcut.language import say
from backcut.picture.lines import straight_path, zigzag_path
from backcut.picture.marks import HOLDER_CM
from backcut.picture.scene import Line, Mark, Primitive, to_svg
from backcut.teaching.sheets.picture import SHEET, framed

#: The part of the floor a mark of the key is drawn on, in cm.
_BOX = "-165 -100 330 200"
_WAY = ((-140.0, 0.0), (130.0, 0.0))


def key() -> list[dict[str, str]]:
    """The marks and their words; run, pass, dribble and screen are those of federation manuals (facts: notation)."""
    way, zigzag = straight_path(_WAY), zigzag_path(_WAY)
    case: list[Primitive] = [Line("case", way), Line("case in", way), Line("run hot", way)]
    shut: list[Primitive] = [Line("shut", straight_path(((-140, 0), (85, 0)))), Line("hand", "M105-26L105 26")]
    ball = Mark("ball", 0, 0, shift_cm=(HOLDER_CM * 0.8, -HOLDER_CM * 0.6))
    marks: list[tuple[list[Primitive], str]] = [
        (case, say("what this sentence asks for")),
        ([Line("run", way)], say("a cut")),
        ([Line("fill", way)], say("a fill or another run")),
        ([Line("pass", way)], say("a pass")),
        (shut, say("a pass that is shut")),
        ([Line("dribble", zigzag)], say("a dribble")),
        ([Line("screen", straight_path(((-140, 0), (90, 0))))], say("a screen")),
        ([Mark("holder", 0, 0, text="1"), ball], say("1 has the ball")),
        ([Mark("denies", 0, 0, 90, text="X2")], say("X2 denies 2")),
        ([Mark("near", -70, 0), Mark("spot", 70, 0)], say("an empty spot: one pass away, farther")),
    ]
    return [{"svg": framed(to_svg(drawn), _BOX, SHEET, words), "words": words} for drawn, words in marks]
