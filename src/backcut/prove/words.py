"""A proof in a coach's words: findings, the possession that shows one, and what was covered."""

from __future__ import annotations

from backcut.engine.possession import Step
from backcut.engine.report import answers
from backcut.engine.words import action_words, event_words
from backcut.offence.action import Action, letter
from backcut.offence.book import Book
from backcut.offence.event import PASSES, EventKind
from backcut.offence.situation import IN_LANE, Doing, Situation
from backcut.prove.depth import NEEDS, Depth, not_tried
from backcut.prove.early import case, cases
from backcut.prove.possession import Possession
from backcut.prove.proof import Covered, Finding, Proof
from backcut.prove.suggest import Way

_EVENTS = {
    EventKind.SKIP: "skip passes",
    EventKind.DRIBBLE: "dribbles at a team-mate",
}


def counted(number: int, one: str, many: str = "") -> str:
    """A number with its noun: 1 situation, 12 situations."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def how_often(finding: Finding) -> str:
    """How many situations have this one cause, and how near the nearest is."""
    if finding.possession is None:
        return "never, in all that was looked at"
    far = f"after {counted(finding.far, 'event')}" if finding.far else "at the start"
    return f"{counted(finding.situations, 'situation')}, the nearest {far}"


def begins(start: Situation) -> str:
    """How a possession begins that does not begin as the book does: with a drive, a throw-in, the ball elsewhere."""
    holder = start.holder
    if holder.doing in IN_LANE and holder.origin is not None:
        return f"{holder.number} has caught the ball and driven to the rim from the {holder.origin.title}."
    for player in start.players:
        if player.doing is Doing.OUT:
            return f"{player.number} has thrown the ball in to {holder.number}, at the {holder.at.title}."
    return f"{holder.number} has the ball at the {holder.at.title}."


def lines(book: Book, shown: Possession) -> list[str]:
    """A possession, one line a step: what happens, who runs, by which sentence."""
    return [_line(book, step) for step in shown.steps]


def _line(book: Book, step: Step) -> str:
    told = [
        f"{action.player} {action_words(action)}{_because(book, action)}" for action in answers(step) if action.moves
    ]
    when = case(step.before) if step.event.kind in PASSES else ""
    event = f"{when[0].upper()}{when[1:]}, {event_words(step)}." if when else f"{event_words(step)}."
    return event + (f" {'; '.join(told)}." if told else "")


def _because(book: Book, action: Action) -> str:
    return "" if action.habit is None else f" ({letter(action.habit)} {book.cue(action.habit)})"


def sentence(book: Book, rank: int) -> str:
    """A sentence of a book with its letter and cue."""
    return f"{letter(rank)} {book.cue(rank)}: {book.sentences[rank].text}"


def covered(proof: Proof, depth: Covered) -> str:
    """What was looked at, at one depth."""
    folded = proof.whole.walk(depth.depth).mirror
    how = f"{depth.situations:,} with mirror images folded" if folded else "left and right told apart"
    sizes = f"{counted(depth.unfolded, 'situation')} ({how})"
    said = f"{depth.depth}: {sizes}, {counted(depth.moves, 'move')}, {depth.seconds:.1f} s: {depth.depth.says}."
    if depth.waiting:
        said += f" Not looked at: {counted(depth.waiting, 'situation')} that were found."
        if depth.multiplied_by is not None:
            said += f" Most of them come from {sentence(proof.book, depth.multiplied_by)}"
    return said


def left_out(proof: Proof) -> list[str]:
    """What a proof did not try at all, and why."""
    said = [
        f'No {_EVENTS[kind]} were tried: the book has no sentence for them ("{NEEDS[kind]}").'
        for kind in not_tried(proof.book)
    ]
    if proof.not_judged:
        names = ", ".join(prop.name for prop in proof.not_judged)
        said.append(f"Not judged, because what was not looked at or comes after a hole may show it: {names}.")
    holes = sum(made.holes for made in proof.whole.walks.values() if made.depth in proof.depths)
    if holes:
        said.append(f"Not followed further: {counted(holes, 'situation')} in which the book leaves something open.")
    return said


def asked(proof: Proof) -> list[Covered]:
    """What was covered of the depths that were asked for."""
    return [depth for depth in proof.covered if depth.depth in proof.depths]


def looked_at(proof: Proof, apart: bool = False) -> list[str]:
    """What was walked through, line by line: each depth asked for, and what else had to be looked at."""
    said = []
    for depth in asked(proof):
        said.append(covered(proof, depth))
        if (timed := proof.timed.get(depth.depth)) is not None:
            sizes = f"{counted(timed.timed, 'situation')} with their clocks, {counted(timed.passes, 'pass', 'passes')}"
            more = f" Not looked at: {timed.waiting:,} that were found." if timed.waiting else ""
            said.append(f"  in time, in steps of {timed.tick_s:g} s: {sizes}, {timed.seconds:.1f} s.{more}")
        if depth.depth is Depth.OVERLAPPED:
            early = cases(proof.whole.walk(depth.depth)).most_common()
            said.append(f"  passes before all stood: {'; '.join(f'{count:,} {when}' for when, count in early)}.")
        if apart:
            lifted = proof.whole.lifted(depth.depth)
            line_ups = f"{lifted.settled:,} of {lifted.possible:,} settled line-ups"
            said.append(f"  players told apart: {counted(lifted.situations, 'situation')}; {line_ups}.")
    also = [f"{depth.depth}, {depth.unfolded:,}" for depth in proof.covered if depth.depth not in proof.depths]
    if also:
        said.append(f"For what has to happen somewhere, these situations too: {'; '.join(also)}.")
    return said


def held_to(proof: Proof) -> list[str]:
    """What was judged, one line a kind."""
    kinds = [kind for kind in ("always", "eventually", "sometimes") if any(p.kind == kind for p, _ in proof.asked)]
    names = {kind: [prop.name for prop, _ in proof.asked if prop.kind == kind] for kind in kinds}
    # A sentence of the coach's own may hold commas.
    return [
        f"{kind}: {('; ' if any(',' in name for name in listed) else ', ').join(listed)}."
        for kind, listed in names.items()
    ]


def changes(way: Way) -> str:
    """What else a way out changes, and what it leaves."""
    said = f"It changes answers in {way.differs:,} of {way.moments:,} moments" if way.differs else "No answer changes"
    said += f": {'; '.join(way.changed)}." if way.changed else "."
    return said + (f" It leaves {counted(way.leaves, 'other finding')}." if way.leaves else "")
