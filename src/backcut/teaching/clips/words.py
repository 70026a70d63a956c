"""The words of a clip: what stands under or beside the floor, and the clip told for whoever cannot see it."""

from __future__ import annotations

import json
import textwrap
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import Final

import typst

from backcut.language import direction, language, noted, say
from backcut.page.plain import font_files, tokens
from backcut.picture.moment import floor_label
from backcut.picture.show import Moment, Show
from backcut.teaching.clips.cut import Part
from backcut.teaching.clips.shape import Room, Shape

#: Sizes in pixels of a 720 p picture: the sentence as large as it fits, title and part (own design: 13 points or more
#: where an upright picture fills a phone of 390 points).
LARGEST, SMALLEST, SMALL = 56, 24, 27
#: Letters of a title that fit beside the part (own design).
TITLE_LETTERS = 30
#: Up to here the letters of Literata and of the fonts that the typesetter brings along reach (Latin, Greek, Cyrillic).
_KNOWN_UP_TO: Final = "\u052f"

PARTS: Final = {Part.STILL: noted("Still"), Part.SLOW: noted("Slow"), Part.GAME: noted("Game speed")}


@dataclass(frozen=True, slots=True)
class Words:
    """What is written in a picture; no letter, cue and sentence where no sentence has spoken."""

    title: str
    part: str
    letter: str
    cue: str
    sentence: str
    caption: str


def words(show: Show, moment: Moment, part: Part) -> Words:
    """The words at a moment: the first sentence in order that has just told somebody what to do."""
    spoken = {answer.letter for answer in moment.answers if answer.lit}
    one = next((sentence for sentence in show.sentences if sentence.letter in spoken), None)
    title = textwrap.shorten(show.title, TITLE_LETTERS, placeholder=" …")
    letter, cue, text = (one.letter, f"{one.cue}.", one.text) if one else ("", "", "")
    return Words(title, say(PARTS[part]), letter, cue, text, moment.caption)


def set_words(said: Words, shape: Shape, head: Room, body: Room, light: str) -> bytes:
    """The words as a PNG of the whole picture on a clear ground, the sentence as large as there is room."""
    data = {name: getattr(said, name) for name in Words.__slots__} | {
        "wide": shape.wide_px,
        "high": shape.high_px,
        "head": head.data(),
        "body": body.data(),
        "largest": LARGEST,
        "smallest": SMALLEST,
        "small": SMALL,
        "lang": language().partition("_")[0],
        "dir": direction(),
        **{name: tokens(light)[name] for name in ("page", "ink", "soft")},
    }
    text = json.dumps(data, ensure_ascii=False)
    png = typst.compile(
        str(files("backcut.teaching.clips") / "words.typ"),
        font_paths=[str(Path(font_files()[0]).parent)],
        ignore_system_fonts=all(character <= _KNOWN_UP_TO or character == "…" for character in text),
        format="png",
        ppi=72,
        sys_inputs={"data": text},
    )
    assert isinstance(png, bytes)  # one page
    return png


def in_words(show: Show, decision: int, shown: list[int]) -> str:
    """The clip in words: the sentence it is about, the picture at the decision, and what happens at each moment."""
    about = words(show, show.moments[decision], Part.STILL)
    lines = [show.title, f"{about.letter} {about.cue} {about.sentence}".strip()]
    lines.append(say("First a still picture: {there}", there=floor_label(show, show.moments[decision])))
    lines.append(say("Then the move, slowly and at game speed:"))
    for place in shown:
        said = words(show, show.moments[place], Part.SLOW)
        lines.append(f"{said.caption} ({said.letter} {said.cue})" if said.letter else said.caption)
    return "\n".join(lines)
