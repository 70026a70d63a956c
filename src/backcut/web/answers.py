"""Not in our team: the answers a player could have at a stop, and the changes of the book that say one."""

from __future__ import annotations

from backcut.errors import BackcutError
from backcut.page.words import sentence_case
from backcut.prove.wanted import Wanted, When, answers, sayings
from backcut.web.envelope import AnswerData, SayingData
from backcut.web.floor import Floor
from backcut.web.stops import Stop, Told, told


def answers_at(floor: Floor, stop: int, player: int) -> list[AnswerData]:
    """What this player is told at a stop, first, then what one change would say instead. Raises: BackcutError."""
    here, at = _at(floor, stop, player)
    found = answers(floor.text, here.played.book, at.asked, player)
    return [AnswerData(id=_id(one), words=_words(one)) for one in found]


def sayings_at(floor: Floor, stop: int, player: int, ident: str) -> list[SayingData]:
    """The changes that say an answer, those that change least first. Raises: BackcutError."""
    here, at = _at(floor, stop, player)
    book = here.played.book
    wanted = next((one for one in answers(floor.text, book, at.asked, player) if _id(one) == ident), None)
    if wanted is None:
        raise BackcutError("This is no answer here any more. Look again at what this player could do.")
    found = sayings(floor.text, book, at.asked, player, wanted)
    return [SayingData(says=one.says, text=one.text, changes=sentence_case(one.elsewhere)) for one in found]


def _at(floor: Floor, stop: int, player: int) -> tuple[Told, Stop]:
    here = told(floor)
    if not 0 <= stop < len(here.stops):
        raise BackcutError(f"There is no decision {stop + 1}: this possession has {len(here.stops)}.")
    at = here.stops[stop]
    numbers = [one.number for one in at.asked.players]
    if player not in numbers:
        raise BackcutError(f"Nobody wears {player}. On the floor are {', '.join(map(str, numbers))}.")
    return here, at


def _id(one: Wanted) -> str:
    return f"{one.kind}|{one.target}|{one.route}|{one.when}"


_WHEN = {When.LATER: ", a little later", When.SOONER: ", sooner", When.PUT_OFF: ", later than now"}


def _words(one: Wanted) -> str:
    return one.words + _WHEN.get(one.when, "")
