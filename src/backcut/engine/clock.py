"""The possession so far, in time: each step becomes runs and flights. The timeline is made of it at any moment.

The rules count a player on the way at the spot he is going to; here he still has to get there. The ball moves on after
the hold count, as soon as it and its receiver can meet at his spot, not when everybody stands.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from itertools import pairwise

import numpy as np

from backcut.court.spots import Spot
from backcut.engine.order import leavers_first
from backcut.engine.possession import Step
from backcut.engine.setting import Setting
from backcut.errors import MotionError
from backcut.motion import pace
from backcut.motion.assemble import Posture, Score, assemble, path_between, watched
from backcut.motion.ball import HELD_M, drop_track, loose_track, pass_track, shot_track, throw
from backcut.motion.defender import defender_place
from backcut.motion.path import Floats, Place, unit
from backcut.motion.room import ROOM_M, TIGHT_M, Way, clearance_m, find_room
from backcut.motion.routes import ELBOW_M, Scene, path_of
from backcut.motion.run import TICK_S, ticks
from backcut.motion.shadow import followed
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


@dataclass(slots=True)
class _Told:
    """One run in the making: what was asked and when it is run, the track before it and with it; the ways tried."""

    action: Action
    step: int
    beat: int
    before: Track
    track: Track
    cue_s: float = -1.0
    start_s: float = 0.0
    end_s: float = 0.0
    tried: dict[tuple[float, Place, Way], Answer] = field(default_factory=dict)


@dataclass(slots=True)
class _Moment:
    """The event being played: its step, when its cue is given, and who has to take his cut elsewhere."""

    step: int
    kind: EventKind
    cue_s: float
    jammed: int | None = None


@dataclass(slots=True, eq=False)
class Clock:
    """The possession after some steps, in time. Whoever plays on plays on with a `copied` one."""

    setting: Setting
    spots: dict[Spot, Place]
    tracks: dict[int, Track]
    holder: int
    catch_s: float
    postures: list[Posture]
    now_s: float = pace.LEAD_IN_S
    held_from_s: float | None = 0.0
    dribbled: list[_Told] = field(default_factory=list)
    told: list[_Told] = field(default_factory=list)
    left: dict[Spot, tuple[_Told, float]] = field(default_factory=dict)
    held: list[Held] = field(default_factory=list)
    flights: list[Flight] = field(default_factory=list)
    air: list[Track] = field(default_factory=list)
    cues_s: list[float] = field(default_factory=list)

    @classmethod
    def begun(cls, setting: Setting, start: Situation) -> Clock:
        """Before the first step. Raises: MotionError if a spot somebody stands on has no place."""
        postures = [Posture(0.0, player.number, player.guard) for player in start.players]
        clock = cls(setting, dict(setting.spots), {}, start.ball, pace.LEAD_IN_S - setting.hold_s, postures)
        for player in start.players:
            x, y = clock.place(player.at)
            beside = sum(other.at is player.at for other in start.players if other.number < player.number)
            clock.tracks[player.number] = standing((x + beside * pace.BESIDE_M, y))
        return clock

    def copied(self) -> Clock:
        """The same, to play on with: runs that are told, tracks and flights are not changed any more."""
        return replace(
            self,
            tracks={**self.tracks},
            postures=[*self.postures],
            dribbled=[*self.dribbled],
            told=[*self.told],
            left={**self.left},
            held=[*self.held],
            flights=[*self.flights],
            air=[*self.air],
            cues_s=[*self.cues_s],
        )

    # Where and when.

    def place(self, spot: Spot) -> Place:
        """The place of a spot. Raises: MotionError if it has none."""
        if spot not in self.spots:
            raise MotionError(f"The {spot.title} ({spot}) has no place on this floor; give one in metres.")
        x, y = self.spots[spot]
        return float(x), float(y)

    def now_at(self, player: int, t_s: float) -> Place:
        """Where a player is at a time, as far as it is known."""
        x, y = self.tracks[player].at(t_s)
        return float(x), float(y)

    def ends_s(self, player: int) -> float:
        """When a player's last run ends."""
        return float(self.tracks[player].t_s[-1])

    # Events.

    def play(self, step: Step) -> None:
        """One more step: its event, then the beats of answers. Raises: MotionError if a spot has no place."""
        number = len(self.cues_s)
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
        hold_s = min(self.setting.hold_s, pace.GATHER_S) if kind in QUICK else self.setting.hold_s
        ready_s = max(self.now_s, self.catch_s + hold_s, self.ends_s(self.holder))
        meets_s = self.ends_s(receiver)
        ball = throw(kind, self.now_at(self.holder, ready_s), self.now_at(receiver, meets_s), self.setting.squad)
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
        self.now_s = max(self.now_s, self.catch_s + self.setting.hold_s, self.ends_s(self.holder), *at)
        return self.now_s

    def _end(self, step: int, kind: EventKind) -> float:
        wait_s = self.setting.hold_s if kind is EventKind.SHOT else pace.GATHER_S
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
        if event.kind is EventKind.DENY and self.setting.denies is not None:
            seen_s = self._read_s(event.players, t_s)
        self.now_s = t_s + seen_s
        return self.now_s

    def _read_s(self, players: Sequence[int], t_s: float) -> float:
        """How long after the defenders set out the book reads a denial of all of them, at most the usual time."""
        assert self.setting.denies is not None
        end_s = max(t_s + pace.READ_S, self.catch_s)
        held = [*self.held, Held(self.holder, min(self.held_from_s or 0.0, end_s), end_s)]
        seen = watched(Score(end_s, self.tracks, held, self.flights, self.air, (), self.postures))
        where = followed(seen, self.setting.squad.runner, self.setting.floor).place_m
        t, numbers = ticks(end_s), list(self.tracks)
        for i in np.flatnonzero(t >= t_s):
            at = [numbers.index(player) for player in players]
            if np.all(self.setting.denies(seen.ball_m[i, None, :2], seen.men_m[i, at], where[i, at])):
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
        end_s = start_s + max(pace.HAND_OFF_S, reach_m / self.setting.squad.chest_m_s)
        ends = [(*self.now_at(who, t_s), HELD_M) for who, t_s in ((self.holder, start_s), (taker, end_s))]
        self._let_go(start_s)
        self._fly(moment.step, str(Kind.HAND_OFF), taker, Track(np.array([start_s, end_s]), np.array(ends)))
        self.holder, self.catch_s, self.held_from_s, self.now_s = taker, end_s, end_s, end_s
        self.dribbled = [t for t in self.told if t.action.player == taker and t.end_s > end_s]
        return end_s

    # Answers.

    def _answer(self, asked: Sequence[Action], situation: Situation, moment: _Moment, beat: int) -> None:
        """The runs of one beat: first as asked, then again until nobody runs through a team-mate."""
        together = [
            _Told(action, moment.step, beat, self.tracks[action.player], self.tracks[action.player])
            for action in leavers_first(asked)
        ]
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
        for told in together:
            told.tried.clear()
        self.dribbled += [told for told in together if told.action.kind is Kind.DRIBBLE]

    def _cue_s(self, told: _Told, moment: _Moment) -> float:
        """When an answer sets off."""
        action, reaction_s = told.action, self.setting.squad.runner.reaction_s
        start_s = moment.cue_s + (0.0 if action.kind is Kind.DRIBBLE else reaction_s)
        if action.kind is Kind.BACK_CUT and moment.kind is EventKind.DENY and self.setting.signal in SIGNALS:
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
                    start_s = max(start_s, waits_s.get(self.setting.fill_timing, start_s))
        return start_s

    def _ways(self, told: _Told, situation: Situation, cue_s: float) -> Callable[[Way], Answer]:
        """The answer as a run, for any way of running it."""
        action, ball_m = told.action, self.now_at(self.holder, max(cue_s, self.catch_s))
        runner = self.setting.squad.runner.at_effort(pace.effort_of(action.kind))
        guard = situation.player(action.player).guard

        def draw(way: Way, here: Place) -> Floats:
            away = -1.0 if ball_m[0] > 0 else 1.0
            target = np.asarray(self._target(action, here, ball_m)) + np.multiply(way.beside_m, (away, 1.0))
            if way.beside_m != (0.0, 0.0):
                target = self.setting.floor.inside(target[None])[0]
            elbow_m = self.spots.get(Spot.RE, ELBOW_M)
            scene = Scene(ball_m, defender_place(guard, here, ball_m), self.setting.floor, elbow_m)
            return path_of(self._route(action), here, (float(target[0]), float(target[1])), scene, way.aside_m)

        def run(way: Way) -> Answer:
            asked = (cue_s, ball_m, way)
            if asked not in told.tried:
                told.tried[asked] = run_on(told.before, cue_s + way.delay_s, partial(draw, way), runner)
            return told.tried[asked]

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
        told.track = self.tracks[told.action.player] = answer.track
        self.left[told.action.origin] = (told, max(self.catch_s, told.start_s) + pace.TWO_COUNT_S)

    # The end.

    def timeline(self) -> Timeline:
        """The timeline of the steps played so far."""
        ends = [self.ends_s(player) for player in self.tracks] + [float(track.t_s[-1]) for track in self.air]
        duration_s = max(*ends, self.now_s, self.catch_s) + pace.LEAD_OUT_S
        over = self.copied()
        over._let_go(duration_s)
        runs: list[Run] = []
        next_s: dict[int, float] = {}
        for told in reversed(self.told):
            action = told.action
            end_s = min(told.end_s, next_s.get(action.player, told.end_s))
            path = path_between(told.track, told.start_s, end_s)
            runs.append(
                Run(action.player, str(action.kind), action.habit, told.step, told.beat, told.start_s, end_s, path)
            )
            next_s[action.player] = told.start_s
        score = Score(
            duration_s, self.tracks, over.held, self.flights, self.air, runs[::-1], self.postures, self.cues_s
        )
        return assemble(score, self.setting.squad.runner, self.setting.floor)
