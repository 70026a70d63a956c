"""Drills and evenings set on paper: what their cards and their page say."""

from __future__ import annotations

from backcut.language import say
from backcut.prove.possession import Possession
from backcut.teaching.drills.card import mistake_of, words
from backcut.teaching.drills.drill import Drill
from backcut.teaching.drills.piece import Piece
from backcut.teaching.examples import Example
from backcut.teaching.sheets.card import Card
from backcut.teaching.sheets.decisions import told
from backcut.teaching.sheets.handout import drawn
from backcut.teaching.sheets.picture import SMALL
from backcut.teaching.sheets.plan import Block, Plan
from backcut.teaching.tonight.plan import Evening


def card_of(drill: Drill) -> Card:
    """The card of a drill. Raises: CourtError or MotionError where its picture cannot be drawn."""
    said, pictures = words(drill), told(_shown(drill.piece))
    return Card(
        tab=said.letter,
        name=said.name,
        purpose=said.sentence,
        needs=said.needs,
        picture=drawn(pictures, pictures.decision, size=SMALL, names=False).svg,
        rotation=(said.set_up, said.rotation[0], said.rotation[2]),
        true=said.true,
        false=" ".join((*said.false[:1], said.false_turns)).strip(),
        say=drill.book.cue(drill.piece.rank),
        score=said.score,
        easier=said.easier,
        harder=said.harder,
        care=said.care,
        more=tuple(
            line
            for line in (
                (say("Defence"), said.defence),
                (say("Mistake"), mistake_of(drill.book, drill.piece.rank)),
                (say("Run it from"), said.spots),
                (say("Turns"), said.each),
                (say("Instead"), said.instead),
            )
            if line[1]
        ),
    )


def _shown(piece: Piece) -> Example:
    """The piece as an example, to be drawn as one."""
    seen = Possession(piece.start, piece.steps, piece.asked.before, piece.at[1])
    return Example(piece.book, piece.rank, seen, piece.at, piece.player)


def plan_of(evening: Evening) -> Plan:
    """The page of an evening."""
    return Plan(
        title=evening.title,
        lines=(evening.about, evening.bring),
        blocks=tuple(
            Block(one.begins, one.minutes, one.title, one.what, one.groups, one.say, one.card)
            for one in evening.activities
        ),
        questions=tuple((one.asks, one.answer) for one in evening.questions),
        not_met=evening.not_met,
        care=evening.care,
    )
