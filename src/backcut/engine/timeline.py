"""A possession in time: the steps that the rules tell become runs, flights and tracks.

The rules count a player on the way at the spot he is going to; here he still has to get there. The ball moves on after
the hold count, as soon as it and its receiver can meet at his spot, not when everybody stands.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import InitVar, dataclass, field
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from backcut.court.spots import Spot
from backcut.engine.order import leavers_first
from backcut.engine.possession import Step
from backcut.errors import MotionError
from backcut.motion import pace
from backcut.motion.assemble import Posture, Score, assemble, path_between, watched
from backcut.motion.ball import HELD_M, drop_track, loose_track, pass_track, shot_track, throw
from backcut.motion.defender import defender_place, shadow
from backcut.motion.floor import FIBA_FLOOR, Floor
from backcut.motion.path import Floats, Place, unit
from backcut.motion.room import ROOM_M, TIGHT_M, Way, clearance_m, find_room
from backcut.motion.routes import ELBOW_M, Scene, path_of
from backcut.motion.run import TICK_S, ticks
from backcut.motion.squads import Squad
from backcut.motion.timeline import Flight, Held, Run, Timeline, Track
from backcut.motion.trail import Answer, places, run_on, standing
from backcut.offence.action import CUTS, Action, Kind, Route
from backcut.offence.event import ENDS, PASSES, WITH_THE_PASS, EventKind
from backcut.offence.situation import Guard, Situation

CLOSE = frozenset({Kind.HAND_OFF, Kind.SCREEN, Kind.USE_SCREEN, Kind.DRIBBLE})
GOES_AT_ONCE = CUTS | {Kind.DRIBBLE, Kind.HAND_OFF, Kind.SCREEN}
QUICK = frozenset({EventKind.TO_CUTTER, EventKind.KICK_OUT})
SIGNALS = frozenset({"fist", "eyes"})
SWEEPS = 3  # estimate: how often the runs of one beat make room for one another
#: Whether each man (k, 2) is denied, given the ball (1, 2) and his defender (k, 2): metres, house frame.
Denies = Callable[[Floats, Floats, Floats], NDArray[np.bool_]]

TIMINGS = ("at once", "looked", "count of two")


def build(
    steps: Sequence[Step],
    spots: Mapping[Spot, Place],
    squad: Squad,
    *,
    hold_s: float,
    fill_timing: str = "looked",
    signal: str = "none",
    denies: Denies | None = None,
    floor: Floor = FIBA_FLOOR,
) -> Timeline:
    """The timeline of a possession.

    `spots` are places in metres of the house frame; `hold_s` the seconds a catcher keeps the ball; `fill_timing` is
    "at once", "looked" or "count of two"; `signal` is "none", "fist" or "eyes"; `denies` reads a denial from places,
    without it a denial takes a fixed time; `floor` is the edges to stay inside.
    Raises: MotionError if there is no step, a spot has no place, the timing is unknown or the hold is below zero.
    """
    if not steps:
        raise MotionError("A possession without a step has no time in it; give one step or more.")
    if fill_timing not in TIMINGS:
        raise MotionError(f'A fill is timed "{fill_timing}"; the timings are: {", ".join(TIMINGS)}.')
    if not (np.isfinite(hold_s) and hold_s >= 0):
        raise MotionError(f"A hold of {hold_s} s cannot be kept; give zero or more seconds.")
    clock = _Clock(spots, squad, hold_s, fill_timing, signal, denies, floor, steps[0].before)
    for number, step in enumerate(steps):
        clock.play(number, step)
    return clock.finish()


@dataclass(slots=True)
class _Told:
    """One run in the making: what was asked, in which step and beat, and when it is run."""

    action: Action
    step: int
    beat: int
    before: Track
    cue_s: float = -1.0
    start_s: float = 0.0
    end_s: float = 0.0


@dataclass(slots=True)
class _Moment:
    """The event being played: its step, when its cue is given, and who has to take his cut elsewhere."""

    step: int
    kind: EventKind
    cue_s: float
    jammed: int | None = None


@dataclass(slots=True)
class _Clock:
    """The possession so far, in time. It changes as it goes and lives only inside `build`."""

    spots: Mapping[Spot, Place]
    squad: Squad
    hold_s: float
    fill_timing: str
    signal: str
    denies: Denies | None
    floor: Floor
    start: InitVar[Situation]
    tracks: dict[int, Track] = field(default_factory=dict)
    holder: int = 0
    catch_s: float = 0.0
    now_s: float = pace.LEAD_IN_S
    held_from_s: float | None = 0.0
    dribbled: list[_Told] = field(default_factory=list)
    told: list[_Told] = field(default_factory=list)
    left: dict[Spot, tuple[_Told, float]] = field(default_factory=dict)
    held: list[Held] = field(default_factory=list)
    flights: list[Flight] = field(default_factory=list)
    air: list[Track] = field(default_factory=list)
    postures: list[Posture] = field(default_factory=list)
    cues_s: list[float] = field(default_factory=list)

    def __post_init__(self, start: Situation) -> None:
        for player in start.players:
            x, y = self.place(player.at)
            beside = sum(other.at is player.at for other in start.players if other.number < player.number)
            self.tracks[player.number] = standing((x + beside * pace.BESIDE_M, y))
            self.postures.append(Posture(0.0, player.number, player.guard))
        self.holder, self.catch_s = start.ball, pace.LEAD_IN_S - self.hold_s

    # Where and when.

    def place(self, spot: Spot) -> Place:
        """The place of a spot. Raises: MotionError if it has none."""
        if spot not in self.spots:
            raise MotionError(f"The {spot.title} ({spot}) has no place on this floor; give one in metres.")
        x, y = self.spots[spot]
        return float(x), float(y)

    def now_at(self, player: int, t_s: float) -> Place:
        x, y = self.tracks[player].at(t_s)
        return float(x), float(y)

    def ends_s(self, player: int) -> float:
        return float(self.tracks[player].t_s[-1])

    # Events.

    def play(self, number: int, step: Step) -> None:
        """One step: its event, then the beats of answers."""
        event, first = step.event, step.beats[0].before if step.beats else step.after
        if step.wait_s is not None and self.cues_s:
            self.now_s = max(self.now_s, self.cues_s[-1] + step.wait_s)
        if event.kind in PASSES and event.receiver is not None:
            cue_s = self._pass(number, event.kind, event.receiver)
        elif event.kind in ENDS:
            cue_s = self._end(number, event.kind)
        elif event.kind is EventKind.DRIBBLE:
            cue_s = self._dribble(step)
        else:
            cue_s = self._defence(step, first)
        self.cues_s.append(cue_s)
        moment = _Moment(number, event.kind, cue_s, event.player if event.kind is EventKind.JAM else None)
        for beat, (situation, actions) in enumerate((b.before, b.decision.actions) for b in step.beats):
            asked = [action for action in actions if action.moves]
            self._answer(asked, situation, moment, beat)
            taker = next((action for action in asked if action.kind is Kind.HAND_OFF), None)
            if taker is not None:
                moment.cue_s = self._hand_off(taker.player, moment)
        if event.kind is EventKind.DENY and any(told.step == number for told in self.told):
            self.now_s += pace.SEEN_S
        self._postures_after(step, cue_s)

    def _pass(self, step: int, kind: EventKind, receiver: int) -> float:
        """The ball leaves when the hold is over and it meets its receiver where he stops. When it is released."""
        hold_s = min(self.hold_s, pace.GATHER_S) if kind in QUICK else self.hold_s
        ready_s = max(self.now_s, self.catch_s + hold_s, self.ends_s(self.holder))
        meets_s = self.ends_s(receiver)
        ball = throw(kind, self.now_at(self.holder, ready_s), self.now_at(receiver, meets_s), self.squad)
        release_s = max(ready_s, meets_s - ball.flight_s)
        track = pass_track(ball, release_s)
        self._let_go(release_s)
        self._fly(step, str(kind), receiver, track)
        self.holder, self.catch_s, self.held_from_s = receiver, float(track.t_s[-1]), float(track.t_s[-1])
        self.now_s = release_s
        return release_s

    def _dribble(self, step: Step) -> float:
        """The holder dribbles when the hold is over and the one he dribbles at is about to be there."""
        at = [self.ends_s(p.number) - pace.ARRIVING_S for p in step.before.players if p.at is step.event.spot]
        self.now_s = max(self.now_s, self.catch_s + self.hold_s, self.ends_s(self.holder), *at)
        return self.now_s

    def _end(self, step: int, kind: EventKind) -> float:
        wait_s = self.hold_s if kind is EventKind.SHOT else pace.GATHER_S
        t_s = max(self.now_s, self.catch_s + wait_s, self.ends_s(self.holder))
        here = self.now_at(self.holder, t_s)
        self._let_go(t_s)
        if kind is EventKind.TURNOVER:
            defender = defender_place(Guard.PLAIN, here, here, on_ball=True)
            self._fly(step, str(kind), None, loose_track(here, defender, t_s))
        else:
            self._fly(step, str(kind), None, shot_track(here, t_s, lay_up=kind is EventKind.LAY_UP))
            self.air.append(drop_track(float(self.air[-1].t_s[-1])))
        self.now_s = t_s
        return t_s

    def _defence(self, step: Step, first: Situation) -> float:
        """A defender acts, or somebody forgets: a short fixed time, so that it can be seen. When it has been seen."""
        event = step.event
        t_s = max(self.now_s, self.catch_s)
        seen_s = pace.READ_S
        if event.kind in WITH_THE_PASS and step.before.last is not None and step.before.last.fresh:
            # These belong to the pass in the air: nobody has answered it yet.
            t_s, seen_s = self.now_s, pace.JUMP_S if event.kind is EventKind.JUMP else 0.0
        elif event.kind is EventKind.JAM:
            cut = next((t for t in reversed(self.told) if t.action.player == event.player), None)
            bumped_s = cut.start_s + pace.JAM_SHARE * (cut.end_s - cut.start_s) if cut else 0.0
            t_s, seen_s = max(self.now_s, bumped_s), 0.0
        elif event.kind is EventKind.FORGET:
            seen_s = pace.GLANCE_S
        elif event.kind is EventKind.DENY:
            t_s = max(t_s, *(self.ends_s(player) - pace.MEETS_S for player in event.players))
        self.postures += [Posture(t_s, p, first.player(p).guard) for p in event.players]
        if event.kind is EventKind.DENY and self.denies is not None:
            seen_s = self._read_s(event.players, t_s)
        self.now_s = t_s + seen_s
        return self.now_s

    def _read_s(self, players: Sequence[int], t_s: float) -> float:
        """How long after the defenders set out the book reads a denial of all of them, at most the usual time."""
        assert self.denies is not None
        end_s = max(t_s + pace.READ_S, self.catch_s)
        held = [*self.held, Held(self.holder, min(self.held_from_s or 0.0, end_s), end_s)]
        seen = watched(Score(end_s, self.tracks, held, self.flights, self.air, (), self.postures))
        where, _ = shadow(seen, self.squad.runner, self.floor)
        t, numbers = ticks(end_s), list(self.tracks)
        for i in np.flatnonzero(t >= t_s):
            at = [numbers.index(player) for player in players]
            if np.all(self.denies(seen.ball_m[i, None, :2], seen.men_m[i, at], where[i, at])):
                return float(t[i]) - t_s
        return pace.READ_S

    def _postures_after(self, step: Step, cue_s: float) -> None:
        """Postures that the answers ended: a back cutter's defender denies until the cut begins."""
        for player in step.after.players:
            latest = [posture for posture in self.postures if posture.player == player.number][-1]
            if latest.guard is not player.guard:
                runs = [t.start_s for t in self.told if t.action.player == player.number and t.start_s >= cue_s]
                self.postures.append(
                    Posture(max(latest.from_s, runs[0] if runs else cue_s), player.number, player.guard)
                )

    # The ball.

    def _let_go(self, t_s: float) -> None:
        """The holder lets go of the ball at `t_s`; while he ran with it he dribbled."""
        if self.held_from_s is None:
            return
        edges = [self.held_from_s]
        for told in self.dribbled:
            edges += [max(told.start_s, edges[-1]), min(told.end_s, t_s)]
        edges.append(t_s)
        for i, (a, b) in enumerate(pairwise(edges)):
            if b > a:
                self.held.append(Held(self.holder, a, b, dribbled=i % 2 == 1))
        self.held_from_s, self.dribbled = None, []

    def _fly(self, step: int, kind: str, receiver: int | None, track: Track) -> None:
        start_s, end_s = float(track.t_s[0]), float(track.t_s[-1])
        self.flights.append(Flight(self.holder, receiver, kind, step, start_s, end_s, track.place_m[:, :2]))
        self.air.append(track)

    def _hand_off(self, taker: int, moment: _Moment) -> float:
        """The ball changes hands where the two come nearest to each other; when it has."""
        t = np.arange(moment.cue_s, max(self.ends_s(taker), self.ends_s(self.holder)) + TICK_S, TICK_S)
        apart = np.hypot(*(places(self.tracks[taker], t) - places(self.tracks[self.holder], t)).T)
        start_s = max(float(t[int(apart.argmin())]) - pace.HAND_OFF_S / 2, moment.cue_s)
        reach_m = float(np.hypot(*np.subtract(self.now_at(taker, start_s), self.now_at(self.holder, start_s))))
        end_s = start_s + max(pace.HAND_OFF_S, reach_m / self.squad.chest_m_s)
        ends = [(*self.now_at(who, t_s), HELD_M) for who, t_s in ((self.holder, start_s), (taker, end_s))]
        self._let_go(start_s)
        self._fly(moment.step, str(Kind.HAND_OFF), taker, Track(np.array([start_s, end_s]), np.array(ends)))
        self.holder, self.catch_s, self.held_from_s, self.now_s = taker, end_s, end_s, end_s
        self.dribbled = [t for t in self.told if t.action.player == taker and t.end_s > end_s]
        return end_s

    # Answers.

    def _answer(self, asked: Sequence[Action], situation: Situation, moment: _Moment, beat: int) -> None:
        """The runs of one beat: first as asked, then again until nobody runs through a team-mate."""
        together = [_Told(action, moment.step, beat, self.tracks[action.player]) for action in leavers_first(asked)]
        self.told += together
        for told in together:
            self._run(told, self._ways(told, situation, self._cue_s(told, moment))(Way()))
        # Each makes room for the others as they run so far; who was hemmed in by one who has moved since tries again.
        for told in together * (SWEEPS if len(together) > 1 else 1):
            cue_s, room_m = self._cue_s(told, moment), TIGHT_M if told.action.kind in CLOSE else ROOM_M
            others = [track for player, track in self.tracks.items() if player != told.action.player]
            if told.cue_s == cue_s and clearance_m(self.tracks[told.action.player], others, cue_s) >= room_m:
                continue
            told.cue_s = cue_s
            self._run(told, find_room(self._ways(told, situation, cue_s), others, cue_s, room_m))
        self.dribbled += [told for told in together if told.action.kind is Kind.DRIBBLE]

    def _cue_s(self, told: _Told, moment: _Moment) -> float:
        """When an answer sets off."""
        action, reaction_s = told.action, self.squad.runner.reaction_s
        start_s = moment.cue_s + (0.0 if action.kind is Kind.DRIBBLE else reaction_s)
        if action.kind is Kind.BACK_CUT and moment.kind is EventKind.DENY and self.signal in SIGNALS:
            start_s += pace.SIGNAL_S
        before = next((t for t in reversed(self.told) if t.action.player == action.player and t is not told), None)
        if before is not None:
            # A cut is finished first, unless a defender has just stopped it.
            stopped = action.player == moment.jammed and before.step != moment.step
            finishes = before.action.kind in CUTS and not stopped
            start_s = max(start_s, before.end_s + pace.LOOK_S if finishes else before.start_s + pace.SET_OFF_S)
        if action.kind is Kind.USE_SCREEN:
            start_s = max([start_s, *[t.end_s for t in self.told if t.action.kind is Kind.SCREEN][-1:]])
        if action.target in self.left and action.kind not in GOES_AT_ONCE:
            leaver, counted_s = self.left[action.target]
            if leaver.action.player != action.player:
                start_s = max(start_s, leaver.start_s + reaction_s)
                if action.kind is Kind.FILL and leaver.action.kind in CUTS:
                    looked_s = leaver.start_s + pace.LOOKED_SHARE * (leaver.end_s - leaver.start_s)
                    waits_s = {"looked": looked_s, "count of two": counted_s}
                    start_s = max(start_s, waits_s.get(self.fill_timing, start_s))
        return start_s

    def _ways(self, told: _Told, situation: Situation, cue_s: float) -> Callable[[Way], Answer]:
        """The answer as a run, for any way of running it."""
        action, ball_m = told.action, self.now_at(self.holder, max(cue_s, self.catch_s))
        runner = self.squad.runner.at_effort(pace.effort_of(action.kind))
        guard = situation.player(action.player).guard

        def run(way: Way) -> Answer:
            def draw(here: Place) -> Floats:
                away = -1.0 if ball_m[0] > 0 else 1.0
                target = np.asarray(self._target(action, here, ball_m)) + np.multiply(way.beside_m, (away, 1.0))
                if way.beside_m != (0.0, 0.0):
                    target = self.floor.inside(target[None])[0]
                scene = Scene(ball_m, defender_place(guard, here, ball_m), self.floor, self.spots.get(Spot.RE, ELBOW_M))
                return path_of(self._route(action), here, (float(target[0]), float(target[1])), scene, way.aside_m)

            return run_on(told.before, cue_s + way.delay_s, draw, runner)

        return run

    def _target(self, action: Action, here: Place, ball_m: Place) -> Place:
        if action.kind is Kind.COME_TO_BALL:
            x, y = np.asarray(here) + pace.TO_BALL_M * unit(np.asarray(ball_m) - here)
            return float(x), float(y)
        if action.kind is Kind.REBOUND:
            # Not under the rim, where the ball comes down, but on the way in.
            x, y = here if float(np.hypot(*here)) <= pace.REBOUND_M else pace.REBOUND_M * unit(here)
            return float(x), float(y)
        x, y = self.place(action.target)
        if action.kind is Kind.SCREEN and action.target is not Spot.R:
            # On the defender's side of the one he screens for.
            x, y = np.array([x, y]) - pace.SCREEN_M * unit((x, y))
        return float(x), float(y)

    def _route(self, action: Action) -> Route:
        if action.route is not Route.PLAIN:
            return action.route
        return {Kind.DRIBBLE: Route.ALONG_ARC, Kind.HAND_OFF: Route.ALONG_ARC}.get(action.kind, Route.PLAIN)

    def _run(self, told: _Told, answer: Answer) -> None:
        told.start_s, told.end_s = answer.start_s, answer.end_s
        self.tracks[told.action.player] = answer.track
        self.left[told.action.origin] = (told, max(self.catch_s, told.start_s) + pace.TWO_COUNT_S)

    # The end.

    def finish(self) -> Timeline:
        """The timeline, when all steps have been played."""
        ends = [self.ends_s(player) for player in self.tracks] + [float(track.t_s[-1]) for track in self.air]
        duration_s = max(*ends, self.now_s, self.catch_s) + pace.LEAD_OUT_S
        self._let_go(duration_s)
        runs = []
        for i, told in enumerate(self.told):
            action = told.action
            later = [t.start_s for t in self.told[i + 1 :] if t.action.player == action.player]
            end_s = min([told.end_s, *later[:1]])
            path = path_between(self.tracks[action.player], told.start_s, end_s)
            runs.append(
                Run(action.player, str(action.kind), action.habit, told.step, told.beat, told.start_s, end_s, path)
            )
        score = Score(duration_s, self.tracks, self.held, self.flights, self.air, runs, self.postures, self.cues_s)
        return assemble(score, self.squad.runner, self.floor)
