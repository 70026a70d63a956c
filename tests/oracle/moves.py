"""One move of the second reading: a pass, one or two denied, or a dribble, played until all have settled again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from .exits import ONE_CORNER_ONLY, exit_spot, far_spot, first_open
from .floor import RIM, Where, is_corner, is_one_pass_away, next_spot, side, who_is_at

Did = dict[int, list[tuple[str, str, str]]]
Choices = Mapping[str, str]

#: Every choice a book may make; the first of each is the default.
CHOICES = {
    "exit": ("first open", "end of the line", "opposite corner", "fewest", "opposite own", "filler's spot"),
    "fillers": ("chain", "nearest only"),
    "corner passer": ("cut and come back", "hold", "cut through"),
    "skip passer": ("hold", "cut"),
    "denied corner": ("back cut", "hold", "go through"),
    "dribble at": ("back cut", "hand-off", "slide on"),
}


@dataclass(frozen=True, slots=True)
class Outcome:
    """Where everybody ends, who has the ball, what each player did in order, and who was left without an answer.

    `did` has a list of (kind, from, to) for everybody. The way of the ball, dribbled or passed, is not in it, so the
    one with the ball at the end did nothing unless he took a hand-off. Who moved nowhere without the ball has one
    "hold"; a fill over two spots is two fills. Who is told no spot to come out to stays at RIM.
    """

    where: Where
    ball: int
    did: Did
    unanswered: set[int]


@dataclass(frozen=True, slots=True)
class Cutter:
    """Somebody at the rim: where he stood, on which side of the ball, and whether he is told to go through."""

    player: int
    stood: str
    came_from: int
    through: bool = False


def after_pass(
    ring: Sequence[str], where: Where, holder: int, receiver: int, choices: Choices | None = None
) -> Outcome:
    """Play a pass: to the very next spot the passer cuts; over a longer way he is a skip passer."""
    chosen = all_choices(choices)
    now, did = dict(where), nothing_done(where)
    if holder == receiver:
        raise ValueError(f"{holder} has the ball and cannot pass it to himself; name somebody else.")
    cuts = is_one_pass_away(ring, now[holder], now[receiver]) or chosen["skip passer"] == "cut"
    answer_a_pass(ring, now, did, holder, receiver, chosen, cuts)
    return finish(ring, now, did, receiver)


def after_denial(
    ring: Sequence[str], where: Where, holder: int, denied: int, choices: Choices | None = None
) -> Outcome:
    """Play one player denied while the ball stays: only one pass away does he answer with a back cut."""
    return after_denials(ring, where, holder, (denied,), choices)


def after_denials(
    ring: Sequence[str], where: Where, holder: int, denied: Sequence[int], choices: Choices | None = None
) -> Outcome:
    """Play one or two players denied at once: those one pass away back cut together and come out together."""
    chosen = all_choices(choices)
    now, did = dict(where), nothing_done(where)
    if holder in denied:
        raise ValueError(f"{holder} has the ball and cannot be denied it; name somebody else.")
    cutters = []
    for player in denied:
        stood = now[player]
        if not is_one_pass_away(ring, now[holder], stood):
            continue
        if is_corner(stood) and chosen["denied corner"] == "hold":
            continue
        through = is_corner(stood) and chosen["denied corner"] == "go through"
        cutters.append(Cutter(player, stood, side(ring, stood, now[holder]), through))
    for cutter in cutters:
        run(now, did, "back cut", cutter.player, RIM)
    move_up(ring, now, did, holder, chosen)
    come_out(ring, now, did, holder, cutters, chosen)
    return finish(ring, now, did, holder)


def after_dribble(ring: Sequence[str], where: Where, holder: int, spot: str, choices: Choices | None = None) -> Outcome:
    """Play a dribble to the very next spot and the answer of the player there, if anybody is."""
    chosen = all_choices(choices)
    now, did = dict(where), nothing_done(where)
    left = now[holder]
    if not is_one_pass_away(ring, left, spot):
        raise ValueError(
            f"{holder} is at {left} and {spot} is not the very next spot of the ring; dribble step by step."
        )
    direction = side(ring, spot, left)
    cutter = who_is_at(now, spot)
    stood = spot

    if cutter is not None and chosen["dribble at"] == "hand-off":
        now[holder] = spot
        run(now, did, "take the hand-off", cutter, left)
        answer_a_pass(ring, now, did, holder, cutter, chosen, cuts=True)
        return finish(ring, now, did, cutter)

    if chosen["dribble at"] == "slide on":
        while cutter is not None:
            stood = now[cutter]
            further = next_spot(ring, stood, direction)
            if further is None:
                break
            pushed = who_is_at(now, further)
            run(now, did, "slide on", cutter, further)
            cutter = pushed
    if cutter is not None:
        run(now, did, "back cut", cutter, RIM)
    now[holder] = spot
    move_up(ring, now, did, holder, chosen)
    if cutter is not None:
        come_out(ring, now, did, holder, [Cutter(cutter, stood, direction)], chosen)
    return finish(ring, now, did, holder)


def answer_a_pass(
    ring: Sequence[str], now: Where, did: Did, passer: int, receiver: int, chosen: Choices, cuts: bool
) -> None:
    """Send the passer to the rim, move the others up, bring him out; or let him hold and move all up."""
    stood = now[passer]
    if is_corner(stood) and chosen["corner passer"] == "hold":
        cuts = False
    if not cuts:
        move_up(ring, now, did, receiver, chosen)
        return
    came_from = side(ring, stood, now[receiver])
    run(now, did, "cut", passer, RIM)
    move_up(ring, now, did, receiver, chosen)
    through = is_corner(stood) and chosen["corner passer"] == "cut through"
    come_out(ring, now, did, receiver, [Cutter(passer, stood, came_from, through)], chosen)


def move_up(ring: Sequence[str], now: Where, did: Did, ball: int, chosen: Choices) -> None:
    """Move somebody without the ball into the empty spot next to him on the ball's side, until nobody wants to."""
    somebody_moved = True
    while somebody_moved:
        somebody_moved = False
        for player in sorted(now):
            if player == ball or now[player] == RIM:
                continue
            toward_the_ball = -side(ring, now[player], now[ball])
            spot = next_spot(ring, now[player], toward_the_ball)
            if spot is None or who_is_at(now, spot) is not None:
                continue
            if chosen["fillers"] == "nearest only" and not is_one_pass_away(ring, spot, now[ball]):
                continue
            run(now, did, "fill", player, spot)
            somebody_moved = True


def come_out(ring: Sequence[str], now: Where, did: Did, ball: int, cutters: Sequence[Cutter], chosen: Choices) -> None:
    """Bring the cutters out of the lane to the spots their exit names, or leave there whom it names none.

    Out there they are perimeter players like the others: with an empty spot toward the ball they move up. Then whoever
    is still in the lane asks again.
    """
    somebody_came_out = True
    while somebody_came_out:
        still_in = [cutter for cutter in cutters if now[cutter.player] == RIM]
        spots = ways_out(ring, now, now[ball], still_in, chosen)
        somebody_came_out = False
        for cutter in still_in:
            spot = spots[cutter.player]
            if spot is not None:
                run(now, did, "come out", cutter.player, spot)
                somebody_came_out = True
        move_up(ring, now, did, ball, chosen)


def ways_out(
    ring: Sequence[str], now: Where, ball_spot: str, cutters: Sequence[Cutter], chosen: Choices
) -> dict[int, str | None]:
    """Ask every cutter for his spot, all at once; of two who want one, the one who came from its side has it.

    The other asks again with that spot taken. Where the exit knows one corner only there is nothing to ask again: both
    are sent to one spot, and both stay.
    """
    wanted = {cutter.player: way_out(ring, now, ball_spot, cutter, chosen) for cutter in cutters}
    if len(cutters) < 2:
        return wanted
    one, other = cutters
    spot = wanted[one.player]
    if spot is None or spot != wanted[other.player]:
        return wanted
    if not one.through and not other.through and chosen["exit"] in ONE_CORNER_ONLY:
        return {one.player: None, other.player: None}
    first, second = (one, other) if side(ring, spot, ball_spot) == one.came_from else (other, one)
    taken = dict(now)
    taken[first.player] = spot
    wanted[second.player] = way_out(ring, taken, ball_spot, second, chosen)
    return wanted


def way_out(ring: Sequence[str], now: Where, ball_spot: str, cutter: Cutter, chosen: Choices) -> str | None:
    """Name the spot one cutter comes out to, None where the book names none."""
    if cutter.through:
        # Without a far spot he comes back, whatever the exit of the others is.
        far = far_spot(ring, now, ball_spot, cutter.came_from)
        return far or first_open(ring, now, ball_spot, cutter.came_from)
    return exit_spot(ring, now, ball_spot, cutter.stood, cutter.came_from, chosen["exit"])


def all_choices(choices: Choices | None) -> dict[str, str]:
    """Give every choice, with the default where the book says nothing. Raises: ValueError for an unknown one."""
    chosen = {name: values[0] for name, values in CHOICES.items()}
    for name, value in (choices or {}).items():
        if value not in CHOICES.get(name, ()):
            raise ValueError(f'No choice is called "{name}: {value}"; the choices are {CHOICES}.')
        chosen[name] = value
    return chosen


def nothing_done(where: Where) -> Did:
    """Give everybody a clean sheet."""
    return {player: [] for player in where}


def run(now: Where, did: Did, kind: str, player: int, to: str) -> None:
    """Run the player there and write it down."""
    did[player].append((kind, now[player], to))
    now[player] = to


def finish(ring: Sequence[str], now: Where, did: Did, ball: int) -> Outcome:
    """Write "hold" for whoever did nothing without the ball; who is still in the lane was not answered."""
    for player in now:
        if player != ball and not did[player]:
            did[player].append(("hold", now[player], now[player]))
    return Outcome(now, ball, did, {player for player in now if now[player] not in ring})
