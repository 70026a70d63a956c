"""What a strip of film shows, in numbers: for the table on the screen and, the same, for JSON."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

import numpy as np

from backcut.court.record import Court
from backcut.court.spots import Spot
from backcut.film.detect import Known, T
from backcut.film.holder import changes
from backcut.film.played import guarded, to_timeline
from backcut.film.spots import BETWEEN, Places, nearest, on_spots
from backcut.film.strip import Strip

FAR_M = 1.524  # 5 ft: the distance from which the design of this tool calls a player far from every spot


@dataclass(frozen=True, slots=True)
class Attacker:
    """One attacker's time in the half court: seconds with the ball, and the share of moments on each spot."""

    number: int
    name: str
    guarded_by: str
    ball_s: float
    on: dict[Spot, float]
    between: float


@dataclass(frozen=True, slots=True)
class Summary:
    """A strip in numbers. `half_court_s` is the time that the shares are counted from: all five past mid-court."""

    strip: Strip
    half_court_s: float
    attackers: tuple[Attacker, ...]
    holder_changes: int
    nearest_median_m: float
    far_share: float

    def to_dict(self) -> dict[str, object]:
        """The summary for JSON."""
        strip, facts = self.strip, self.strip.facts
        return {
            "file": strip.file,
            "format": strip.reader,
            "court": strip.court,
            "start_s": round(strip.start_s, 3),
            "duration_s": round(strip.duration_s, 3),
            "moments": len(strip.t_s),
            "rate_hz": round(strip.rate_hz, 3),
            "ball_height": strip.ball_m.shape[1] == 3,
            "units": known_dict(facts.units),
            "origin": known_dict(facts.origin),
            "attack": facts.attack and known_dict(facts.attack),
            "y_axis": known_dict(facts.y_axis),
            "offence": known_dict(strip.offence),
            "half_court_s": round(self.half_court_s, 3),
            "holder_changes": self.holder_changes,
            "nearest_spot_median_m": round(self.nearest_median_m, 3),
            "farther_than_5_ft": round(self.far_share, 4),
            "attackers": [
                {
                    "number": one.number,
                    "name": one.name,
                    "guarded_by": one.guarded_by,
                    "ball_s": round(one.ball_s, 3),
                    "on_spots": {spot.value: round(share, 4) for spot, share in one.on.items()},
                    BETWEEN.replace(" ", "_"): round(one.between, 4),
                }
                for one in self.attackers
            ],
            "notes": list(strip.notes),
        }


def known_dict(known: Known[T]) -> dict[str, str]:
    """A fact for JSON: value, how it is known, evidence."""
    return {"value": str(known.value), "how": str(known.how)} | ({"evidence": known.evidence} if known.evidence else {})


def summarise(strip: Strip, spots: Places, court: Court) -> Summary:
    """The numbers of a strip on these spots. Where the five are never all past mid-court, all moments count."""
    here = strip.in_half_court(court.mid_court_y_m)
    if not here.any():
        here = np.ones(len(strip.t_s), dtype=bool)
    step_s = np.diff(strip.t_s, append=strip.t_s[-1])
    rows = [row for row, counts in zip(on_spots(strip.attackers_m, spots), here, strict=True) if counts]
    away_m = nearest(strip.attackers_m[here], spots)[1]
    timeline = to_timeline(strip)
    men = guarded(strip)
    attackers = []
    for i, number in enumerate(strip.numbers):
        share = {spot: count / len(rows) for spot, count in Counter(row[i] for row in rows).most_common()}
        attackers.append(
            Attacker(
                number=number,
                name=strip.attackers[i],
                guarded_by=strip.defenders[men.index(i)],
                ball_s=sum(held.end_s - held.start_s for held in timeline.held if held.player == number),
                on={spot: part for spot, part in share.items() if spot is not None},
                between=share.get(None, 0.0),
            )
        )
    return Summary(
        strip=strip,
        half_court_s=float(step_s[here].sum()),
        attackers=tuple(attackers),
        holder_changes=changes(timeline.held),
        nearest_median_m=float(np.median(away_m)),
        far_share=float((away_m > FAR_M).mean()),
    )
