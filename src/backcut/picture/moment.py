"""A moment of a show as a scene: the lines of action, everybody in his place, the lettering."""

from __future__ import annotations

import math

from backcut.language import noted, say
from backcut.motion.timeline import Timeline, holder_at, pose
from backcut.offence.action import Kind
from backcut.picture import arrows
from backcut.picture.apart import question
from backcut.picture.lettering import Box, Crowd, around, flag_place
from backcut.picture.lines import Place
from backcut.picture.marks import DISC_CM, HOLDER_CM
from backcut.picture.scene import Line, Mark, Primitive, Scene, Word
from backcut.picture.show import ArrowKind, Moment, Show, Stance

#: The plate of each stance; who is on the ball is known from the pose.
PLATES = {Stance.DENIES: "denies"}
FREE_HAND = frozenset({Stance.HELPS, Stance.JUMPED})

#: Within this of a spot a player is said to be there; estimate: half the distance between neighbouring spots.
NEAR_M = 1.5

#: Width of one italic letter of a spot's name on the largest marks: measured on the page, with a little air.
LETTER_CM = 21.0

LABELLED = frozenset(ArrowKind) - {ArrowKind.PASS, ArrowKind.SHUT}


def lit_players(moment: Moment) -> frozenset[int]:
    """The players whose answer or move is lit."""
    answered = (answer.player for answer in moment.answers if answer.lit)
    return frozenset(answered) | {arrow.player for arrow in moment.arrows if arrow.lit}


def turn_deg(heading_deg: float) -> float:
    """A heading of the house frame (0 is +y, 90 is +x) as the turn of a plate drawn pointing up the page."""
    return (180.0 - heading_deg) % 360.0


def plate(number: int, moment: Moment, holder: int | None) -> str:
    """The symbol of the defender of player `number`."""
    if number == holder:
        return "arms"
    return PLATES.get(moment.guards.get(number, Stance.PLAIN), "plain")


def look_of_the_ball(timeline: Timeline, t_s: float) -> Place:
    """Unit direction from the holder to where the ball goes next, or to the basket: there the ball sits on the ring."""

    def place_of(player: int | None, otherwise: Place) -> Place:
        track = timeline.players.get(player or 0)
        if track is None:
            return otherwise
        x, y = track.place_at(t_s)[:2]
        return x, y

    ahead = (f for f in timeline.flights if f.start_s >= t_s - 1e-6)
    flight = min(ahead, key=lambda f: f.start_s, default=None)
    holder = place_of(holder_at(timeline, t_s), (0.0, 0.0))
    target = (0.0, 0.0) if flight is None else (float(flight.path_m[-1][0]), float(flight.path_m[-1][1]))
    target = place_of(None if flight is None else flight.to_player, target)
    dx, dy = target[0] - holder[0], target[1] - holder[1]
    far = math.hypot(dx, dy)
    return (dx / far, dy / far) if far > 0.01 else (0.0, -1.0)


def bodies(moment: Moment, timeline: Timeline) -> tuple[Mark, ...]:
    """Defenders, then attackers, then the ball, each where the pose has him: a mark is never moved to look better.

    A defender's free hand is always there and stands away (class "away") while both his hands are busy.
    """
    places = pose(timeline, moment.t_s)
    out: list[Mark] = []
    for player, (x, y, heading) in places.defenders.items():
        to_ball = math.degrees(math.atan2(places.ball[0] - x, y - places.ball[1]))
        free = moment.guards.get(player) in FREE_HAND and player != places.holder
        out.append(Mark("hand-free", x * 100, y * 100, to_ball, style="" if free else "away", name=f"h{player}"))
        symbol = plate(player, moment, places.holder)
        out.append(Mark(symbol, x * 100, y * 100, turn_deg(heading), f"X{player}", name=f"x{player}"))
    for player, (x, y) in places.players.items():
        symbol = "holder" if player == places.holder else "attacker"
        out.append(Mark(symbol, x * 100, y * 100, text=str(player), name=f"p{player}"))
    if places.holder is None:
        out.append(Mark("ball", places.ball[0] * 100, places.ball[1] * 100, name="ball"))
    else:
        x, y = places.players[places.holder]
        dx, dy = look_of_the_ball(timeline, moment.t_s)
        out.append(Mark("ball", x * 100, y * 100, shift_cm=(dx * HOLDER_CM, dy * HOLDER_CM), name="ball"))
    return tuple(out)


def glows(moment: Moment, timeline: Timeline) -> tuple[Mark, ...]:
    """The marker under each player; away unless his answer is lit."""
    lit = lit_players(moment)
    return tuple(
        Mark("glow", x * 100, y * 100, style="" if player in lit else "away", name=f"g{player}")
        for player, (x, y) in pose(timeline, moment.t_s).players.items()
    )


def _cm(place: Place) -> Place:
    return place[0] * 100, place[1] * 100


def scene(show: Show, moment: Moment, floor: Box) -> Scene:
    """The whole drawing of a moment. `floor` is the drawn part of the court in cm, where lettering may stand."""
    places = pose(show.timeline, moment.t_s)
    discs = [_cm(place) for place in places.players.values()]
    plates = {number: (x * 100, y * 100) for number, (x, y, _) in places.defenders.items()}
    opens = {o: _cm(show.spots[o.spot]) for o in moment.open_spots if o.spot in show.spots}
    opens = {o: place for o, place in opens.items() if all(math.dist(place, disc) > DISC_CM for disc in discs)}

    layered: list[tuple[int, Line]] = []
    paths = {arrow: arrows.drawn_path(arrow, discs, list(opens.values())) for arrow in moment.arrows}
    for arrow, path in paths.items():
        hand = plates.get(arrow.to_player) if arrow.to_player is not None else None
        layered += arrows.under(arrow, path, hand)
    layered.sort(key=lambda item: item[0])

    crowd = Crowd(floor, [*discs, *opens.values()], list(plates.values()), [p for p in paths.values() if len(p) > 1])
    over: list[Primitive] = []
    taken: list[Box] = []
    for arrow in sorted(moment.arrows, key=lambda a: not a.lit):
        path = paths[arrow]
        if arrow.letter is None or arrow.kind not in LABELLED or len(path) < 2:
            continue
        (x, y), box = flag_place(path, arrow.label, crowd, taken, arrow.lit)
        taken.append(box)
        style = "on" if arrow.lit else ""
        over.append(Mark("flag", x, y, text=arrow.letter, word=arrow.label, style=style, runner=arrow.player))
    for spot, place in opens.items():
        if not any(math.dist(_cm(a.path_m[-1]), place) < 60.0 for a in moment.arrows if a.path_m):
            half = len(spot.spot.title) * LETTER_CM / 2
            x = min(max(place[0], floor.left + half), floor.right - half)
            over.append(Word("say mid aside", x, _name_below(place, discs, list(plates.values())), spot.spot.title))
    for answer in moment.answers:
        if answer.kind == Kind.NO_ANSWER and answer.player in places.players:
            disc = _cm(places.players[answer.player])
            others = [place for place in (*discs, *plates.values()) if place != disc]
            over.append(question(disc, DISC_CM, others))
    under: list[Primitive] = [Mark("near" if o.near else "spot", *place) for o, place in opens.items()]
    return Scene((*under, *(line for _, line in layered)), bodies(moment, show.timeline), tuple(over))


def _name_below(place: Place, discs: list[Place], plates: list[Place]) -> float:
    """The baseline of a spot's name: under its ring, or over it where somebody stands below."""
    below, above = place[1] + 74.0, place[1] - 50.0
    crowded = around((place[0], below), 60.0)
    return above if any(crowded.depth(other, DISC_CM) for other in (*discs, *plates)) else below


_GUARDS = {
    Stance.DENIES: noted("defender denies"),
    Stance.SAGS: noted("defender sags"),
    Stance.JUMPED: noted("defender jumped to the ball"),
    Stance.HELPS: noted("defender helps"),
}


def floor_label(show: Show, moment: Moment) -> str:
    """The picture in one sentence for whoever cannot see it: where each player is and who has the ball."""
    places = pose(show.timeline, moment.t_s)
    answers = {answer.player: answer.text for answer in moment.answers}
    parts = []
    for player, (x, y) in places.players.items():
        spot = min(show.spots, key=lambda s: math.dist(show.spots[s], (x, y)), default=None)
        near = spot is not None and math.dist(show.spots[spot], (x, y)) < NEAR_M
        where = say("at the {spot}", spot=spot.title) if near and spot is not None else say("between spots")
        has = say("has the ball") if player == places.holder else answers.get(player, "")
        guard = say(_GUARDS[stance]) if (stance := moment.guards.get(player)) in _GUARDS else ""
        parts.append(", ".join(word for word in (f"{player} {where}", has, guard) if word))
    return f"{'; '.join(parts)}."
