"""What the quiz page's script reads: each question with its words, its pictures and its tracks, all made here."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Sequence

from backcut.language import say
from backcut.motion.timeline import pose
from backcut.offence.action import Kind, letter
from backcut.page.data import held
from backcut.page.tracks import packed_timeline
from backcut.picture.lettering import Box
from backcut.picture.moment import FREE_HAND, PLATES, scene
from backcut.picture.scene import to_svg
from backcut.picture.show import Moment, Show
from backcut.teaching.quizzes.picture import JOG_M_S, Pictured, deed_end
from backcut.teaching.quizzes.question import Ask, Choice

Json = dict[str, object]


def question_data(pictured: Pictured, room: Box) -> Json:
    """One question."""
    question, shown = pictured.question, pictured.show
    at, t_s = question.occasion, pictured.asked.t_s
    sign, cue, text = question.sentence
    drawn, answer = scene(shown, pictured.asked, room), scene(shown, pictured.answered, room)
    return {
        "id": question.name,
        "ask": str(question.ask),
        "rank": question.rank,
        "mark": None if question.ask is Ask.WHO else at.player,
        "runner": at.player,
        "you": question.ask is Ask.WHERE,
        "words": question.words,
        "told": at.happened,
        "answer": question.answer,
        "sentence": [sign, cue, text],
        "floor": _floor_words(shown, pictured.asked),
        "under": old_browsers(to_svg(drawn.under)),
        "over": old_browsers(to_svg(drawn.over)) + _hole(pictured),
        "answered": [old_browsers(to_svg(answer.under)), old_browsers(to_svg(answer.over))],
        "times": [round(s * 100) for s in (t_s, pictured.from_s, pictured.to_s)],
        "tracks": packed_timeline(shown.timeline),
        "held": held(shown),
        "plates": {str(n): PLATES[stance] for n, stance in pictured.asked.guards.items() if stance in PLATES},
        "free": sorted(n for n, stance in pictured.asked.guards.items() if stance in FREE_HAND),
        "deed": _deed(pictured),
        "cells": _cells(pictured),
        "options": [] if question.ask in (Ask.WHERE, Ask.WHO) else _options(pictured),
    }


def _deed(pictured: Pictured) -> list[int] | None:
    """The mistake in time: who, from when to when (hundredths of a second), from where to where (cm)."""
    question, t_s = pictured.question, pictured.asked.t_s
    if question.deed is None:
        return None
    player = question.occasion.player
    begin, end = pose(pictured.show.timeline, t_s).players[player], deed_end(question, pictured.show, t_s)
    takes_s = math.dist(begin, end) / JOG_M_S
    return [player, *(round(v * 100) for v in (t_s, t_s + takes_s, *begin, *end))]


def _hole(pictured: Pictured) -> str:
    """A question mark on the spot that is empty."""
    question = pictured.question
    spot = question.occasion.action.target
    kind = question.occasion.action.kind
    if question.ask is not Ask.WHO or kind is not Kind.FILL or spot not in pictured.show.spots:
        return ""
    x, y = pictured.show.spots[spot]
    if any(
        math.dist((x, y), place) < 0.6 for place in pose(pictured.show.timeline, pictured.asked.t_s).players.values()
    ):
        return ""
    return (
        f'<g class="hole" transform="translate({x * 100:.0f} {y * 100:.0f})"><g class="m"><text y="19">?</text></g></g>'
    )


def _cells(pictured: Pictured) -> list[list[object]]:
    """The places to tap, in cm: place, words, whether it is right, and why or why not."""
    question, shown = pictured.question, pictured.show
    places = pose(shown.timeline, pictured.asked.t_s).players
    found: list[list[object]] = []
    for choice in question.choices:
        if choice.spot is not None:
            x, y = shown.spots[choice.spot]
        elif choice.player is not None:
            x, y = places[choice.player]
        else:
            continue
        found.append([round(x * 100), round(y * 100), _label(choice), choice.right, choice.why])
    return found


def _label(choice: Choice) -> str:
    return choice.text if choice.spot is not None else say("Player {player}", player=choice.player)


def _options(pictured: Pictured) -> list[list[object]]:
    """The answers in words: letter, the words, the words of a sentence, whether it is right, and why or why not."""
    book = pictured.question.occasion.book
    return [
        [
            letter(choice.rank) or "",
            choice.text,
            "" if choice.rank is None else book.sentences[choice.rank].text,
            choice.right,
            choice.why,
        ]
        for choice in pictured.question.choices
    ]


def _floor_words(shown: Show, moment: Moment) -> str:
    """Who stands where, in words, for whoever cannot see the picture."""
    places = pose(shown.timeline, moment.t_s)
    parts = []
    for number, (x, y) in places.players.items():
        near, far = min(((s, math.dist(place, (x, y))) for s, place in shown.spots.items()), key=lambda one: one[1])
        told = say("{player}: {spot}") if far < 1.5 else say("{player}: on the way, near the {spot}")
        words = told.format(player=number, spot=near.title)
        if number == places.holder:
            words = say("{where}, has the ball", where=words)
        if PLATES.get(moment.guards[number]) == "denies" if number in moment.guards else False:
            words = say("{where}, denied", where=words)
        parts.append(words)
    return "; ".join(parts) + "."


def old_browsers(markup: str) -> str:
    """The same for browsers before 2018, which know `href` in a drawing by its first name only."""
    return re.sub(r'<use href="(#[\w-]+)"', r'<use href="\1" xlink:href="\1"', markup)


def json_in_script(data: object) -> str:
    """Data as JSON that is safe inside a script element."""
    text = json.dumps(data, separators=(",", ":"), ensure_ascii=False)
    text = text.replace("</", "<\\/").replace("<!", "\\u003c!").replace("<script", "\\u003cscript")
    return text.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def quiz_data(asked: Sequence[Pictured], room: Box) -> list[Json]:
    """All questions, in order."""
    return [question_data(pictured, room) for pictured in asked]
