"""The quiz as one file: questions, pictures, fonts, schedule and script; nothing is fetched, nothing is sent."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from hashlib import sha256
from html import escape
from importlib.resources import files

from backcut.engine.gym import gym
from backcut.language import direction, language, say
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.page.bundle import joined
from backcut.page.document import AIR_CM, fonts, lowest_cm, static
from backcut.page.plain import marks_style
from backcut.picture.floor import Floor, floor
from backcut.picture.marks import defs
from backcut.picture.moment import turn_deg
from backcut.picture.scene import Mark, to_svg
from backcut.teaching.quizzes.asked import QuizError
from backcut.teaching.quizzes.code import ASKED, SENTENCES, book_number
from backcut.teaching.quizzes.data import json_in_script, old_browsers, quiz_data
from backcut.teaching.quizzes.picture import Pictured, pictured
from backcut.teaching.quizzes.question import Question
from backcut.teaching.quizzes.schedule import numbers

#: What a chat message and an old phone take without complaint (own choice).
MOST_BYTES = 1_000_000
#: Floor kept at the sides, for a player in the corner, and beyond the farthest mark, for the word at it; in cm (own
#: design, no source).
SIDE_CM = 52.0
BELOW_CM = 190.0


def quiz_page(book: Book, asked: Sequence[Question], *, player: int | None = None) -> str:
    """The page of these questions, for one number or for the squad.

    Raises: QuizError where there is no question, or more than one file or one code can hold.
    """
    if not asked:
        raise QuizError(f"{book.title}: a quiz without a question.")
    if len(book.sentences) >= SENTENCES or len(asked) >= ASKED:
        raise QuizError(f"A quiz holds at most {ASKED - 1} questions. Ask for fewer.")
    here = gym(book)
    drawn = [pictured(question, here) for question in asked]
    court = floor(here.court)
    title = say("Quiz: {title}", title=book.title)
    if player is not None:
        title = say("Quiz for {player}: {title}", player=player, title=book.title)
    style = _style()
    code = f'(function () {{\n"use strict";\n{_script()}}})();\n'
    data = json_in_script(_data(book, drawn, court, player))
    policy = (
        f"default-src 'none'; style-src {_hash(style)}; script-src {_hash(code)}; font-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    page = "\n".join(
        [
            f'<!doctype html>\n<html lang="{language()}" dir="{direction()}" class="no-script">\n<head>\n'
            f'<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy" content="{policy}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{escape(title)} · Backcut</title>\n<style>{style}</style>\n</head>\n<body>",
            _head(title),
            f"<main>{_court(drawn, court)}{_asking()}{_ending()}</main>",
            f'<noscript><p class="words">{escape(say("This quiz needs JavaScript, which is switched off here."))}</p>'
            "</noscript>",
            f'<script type="application/json" id="quiz">{data}</script>\n<script>{code}</script>\n</body>\n</html>\n',
        ]
    )
    if len(page.encode()) >= MOST_BYTES:
        raise QuizError(
            f"{len(asked)} questions make a file of {len(page.encode()) / 1e6:.1f} MB, too much for a chat message. "
            "Ask for fewer with --count."
        )
    return page


def _hash(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def _own(name: str) -> str:
    return (files("backcut.teaching.quizzes") / "static" / name).read_text("utf-8")


def _script() -> str:
    names = ("quiz.js", "cells.js", "code.js", "floor.js", "keep.js", "schedule.js")
    return joined({name: _own(name) for name in names}, "quiz.js")


def _style() -> str:
    """The colours and marks of the page, and what is the quiz's own."""
    sheet = static("style.css").decode()
    return f"{fonts()}{sheet[: sheet.index('/* page */')]}{marks_style()}{_own('quiz.css')}"


def _data(book: Book, drawn: Sequence[Pictured], court: Floor, player: int | None) -> dict[str, object]:
    weights, retention, longest = numbers()
    start = turn_deg(0.0)
    number = book_number(book)
    return {
        "key": f"backcut-quiz-{number}-{player or 'squad'}",
        "book": number,
        "shirt": player,
        "sentences": [[letter(rank), book.cue(rank)] for rank in range(len(book.sentences))],
        "schedule": {"weights": weights, "retention": retention, "longest": longest},
        "turn": [start, (turn_deg(1.0) - start + 180.0) % 360.0 - 180.0],
        "words": words(),
        "questions": quiz_data(drawn, court.room),
    }


def words() -> dict[str, str]:
    """Every word that the script says."""
    return {
        "count": say("Question {n} of {all}"),
        "you": say("you"),
        "yes": say("Yes."),
        "no": say("No."),
        "next": say("Next"),
        "result": say("To the result"),
        "slow": say("Show me slow"),
        "again": say("Once more, slow"),
        "mistake": say("Show what happens"),
        "where": say("Tap a spot on the floor."),
        "who": say("Tap a player on the floor."),
        "cells": say("The floor: arrow keys go from place to place, Enter takes one"),
        "of": say("{n} of {all} right"),
        "of-short": say("{n} of {all}"),
        "nothing": say("Nothing to ask today"),
        "tomorrow": say("What was not right comes back tomorrow; what was right, later."),
        "in-one": say("The next question comes back in {n} day."),
        "in-many": say("The next questions come back in {n} days."),
        "copied": say("Copied."),
        "not-copied": say("This phone does not copy by itself: press long on the code."),
        "day": say("Day"),
        "night": say("Night"),
    }


def _head(title: str) -> str:
    turn, night = escape(say("Turn the floor")), escape(say("Night"))
    return (
        f'<header class="top"><h1>{escape(title)}</h1><div class="views">'
        f'<button type="button" id="turn" aria-pressed="true">{turn}</button>'
        f'<button type="button" id="light">{night}</button></div></header>'
    )


def _court(drawn: Sequence[Pictured], court: Floor) -> str:
    """The floor with everybody on it; the script puts them in their places."""
    room = court.room
    low = max(lowest_cm(pictured.show, Floor("", room)) for pictured in drawn)
    low = min(low, max(_lowest(pictured) for pictured in drawn) + BELOW_CM)
    corner = f"{room.left - SIDE_CM:.0f} {room.top - AIR_CM:.0f}"
    size = f"{room.right - room.left + 2 * SIDE_CM:.0f} {low - room.top + AIR_CM:.0f}"
    numbers = sorted({number for pictured in drawn for number in pictured.show.timeline.players})
    bodies: list[str] = [to_svg([Mark("glow", 0, 0, name=f"g{n}") for n in numbers])]
    plates = [mark for n in numbers for mark in (Mark("hand-free", 0, 0, name=f"h{n}"), _plate(n))]
    discs = "".join(
        to_svg([Mark("attacker", 0, 0, text=str(n), name=f"p{n}")]).replace(
            "</text></g></g>", '</text><text class="you-word" y="102"></text></g></g>'
        )
        for n in numbers
    )
    ball = to_svg([Mark("ball", 0, 0, shift_cm=(1, 1), name="ball")])
    label = escape(say("Half court"))
    return (
        f'<figure class="court"><svg id="floor" class="half turned" viewBox="{corner} {size}" role="group" '
        f'aria-labelledby="floor-title" aria-describedby="floor-said"><title id="floor-title">{label}</title>'
        f'<desc id="floor-said"></desc>{defs()}<g aria-hidden="true">{court.svg}{old_browsers("".join(bodies))}'
        f'<path id="way" class="trail"/><g id="under"></g>'
        f"{old_browsers(to_svg(plates))}{old_browsers(discs)}{old_browsers(ball)}"
        f'<g id="over"></g></g><g id="cells" role="group"></g></svg></figure>'
    )


def _plate(number: int) -> Mark:
    return Mark("plain", 0, 0, text=f"X{number}", name=f"x{number}")


def _lowest(pictured: Pictured) -> float:
    """The lowest place of anybody in the part that is shown, in cm."""
    timeline = pictured.show.timeline
    tracks = [*timeline.players.values(), *timeline.defenders.values()]
    return max(float(track.place_m[:, 1].max()) * 100 for track in tracks)


def _asking() -> str:
    return (
        '<section class="words" id="asked" aria-labelledby="words"><p class="count" id="count"></p>'
        '<p class="told" id="told"></p><h2 class="ask" id="words" tabindex="-1" aria-describedby="told"></h2>'
        '<p class="hint" id="hint"></p><ul id="options"></ul>'
        '<div class="said" id="said" role="status"></div><div class="deck">'
        '<button type="button" class="full" id="next" hidden></button>'
        '<button type="button" class="line" id="slow" hidden></button></div></section>'
    )


def _ending() -> str:
    show = escape(say("Show this code to your coach, or send it. It holds your number and these counts, no name."))
    return (
        '<section class="words end" id="end" hidden aria-labelledby="end-words"><h2 id="end-words" tabindex="-1"></h2>'
        f'<p id="end-then"></p><h3>{escape(say("So far, by sentence"))}</h3><ul class="counts" id="counts"></ul>'
        f'<div class="shirt"><label for="shirt">{escape(say("The number on your shirt, 0 to 99"))}</label>'
        '<input id="shirt" type="number" inputmode="numeric" min="0" max="99" step="1" autocomplete="off"></div>'
        f'<div id="code-part" hidden><output class="code" id="code" for="shirt"></output><p class="small">{show}</p>'
        f'<div class="deck"><button type="button" class="full" id="copy">{escape(say("Copy the code"))}</button>'
        '<span class="small" id="copied" role="status"></span></div></div>'
        f'<div class="deck"><button type="button" class="line" id="all">{escape(say("Ask all of them again"))}</button>'
        "</div></section>"
    )
