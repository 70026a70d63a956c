"""Which sentence says so: the sentence that won, among those it beat and those that are silent."""

from __future__ import annotations

from collections.abc import Iterator

from backcut.engine.words import action_words, claim_words, why_beaten
from backcut.language import say
from backcut.offence.action import Kind
from backcut.offence.event import PASSES
from backcut.teaching.quizzes.occasion import Occasion
from backcut.teaching.quizzes.question import Ask, Choice, Question

#: Answers to choose from at most, and at least so many wrong ones (own choice: four fit on a phone).
MOST = 4
LEAST_WRONG = 2


def which(occasion: Occasion) -> Iterator[Question]:
    """Which sentence says so, of a run, of somebody who stays, and of whoever has just caught the ball."""
    action, book = occasion.action, occasion.book
    if action.habit is None or action.kind in (Kind.NO_ANSWER, Kind.FORGET, Kind.DRIBBLE):
        return
    if action.kind in (Kind.BALL, Kind.LOOK_TO_DRIBBLE) and not _caught(occasion):
        return
    if action.kind is Kind.HOLD and occasion.runs(occasion.player):
        return
    right = Choice(book.cue(action.habit), True, say("It is the first that fits."), rank=action.habit)
    wrong = _wrong(occasion)
    if len(wrong) < LEAST_WRONG:
        return
    words = say("{player} {does}. Which sentence says so?", player=action.player, does=action_words(action))
    if action.kind in (Kind.BALL, Kind.LOOK_TO_DRIBBLE):
        words = say("{player} catches the ball and keeps it for now. Which sentence says so?", player=action.player)
    choices = sorted([right, *wrong[: MOST - 1]], key=lambda choice: choice.rank or 0)
    yield Question(Ask.SENTENCE, occasion, action.habit, words, tuple(choices))


def _caught(occasion: Occasion) -> bool:
    event, rank = occasion.step.event, occasion.action.habit
    if rank is None or occasion.book.sentences[rank].phrase.covers_rest:
        return False
    return event.kind in PASSES and event.receiver == occasion.player and occasion.beat == 0


def _wrong(occasion: Occasion) -> list[Choice]:
    """The beaten first, then the silent, the nearest in rank first; none that wants the same of the player."""
    action, book = occasion.action, occasion.book
    assert action.habit is not None
    winner, same = action.habit, (action.kind, action.target)
    beaten = {claim.habit: claim for claim in action.beat}
    found = []
    for rank, claim in sorted(beaten.items()):
        if (claim.kind, claim.target) == same or _both_stay(action.kind, claim.kind):
            continue
        wanted = say("{cue} {wanted}.", cue=book.cue(rank), wanted=claim_words(claim, action.player))
        found.append(Choice(book.cue(rank), False, f"{wanted} {why_beaten(book, winner, rank)}", rank=rank))
    cues = {book.cue(winner), *(choice.text for choice in found)}
    silent = [rank for rank in range(len(book.sentences)) if rank not in beaten and rank != winner]
    for rank in sorted(silent, key=lambda rank: (abs(rank - winner), rank)):
        if book.cue(rank) not in cues:
            why = say("It is silent here. {sentence}", sentence=book.sentences[rank].text)
            found.append(Choice(book.cue(rank), False, why, rank=rank))
            cues.add(book.cue(rank))
    return found


def _both_stay(one: Kind, other: Kind) -> bool:
    """Whether two answers are the same to the eye: to stand, with the ball or without."""
    still = (Kind.HOLD, Kind.BALL, Kind.LOOK_TO_DRIBBLE)
    return one in still and other in still
