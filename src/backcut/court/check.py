"""What is impossible about a court: every contradiction between two of its measures, all at once."""

from __future__ import annotations

import math
from collections.abc import Iterator

from backcut.court.measure import Status
from backcut.court.record import Court
from backcut.court.units import in_feet, in_metres
from backcut.errors import CourtError

_SLACK_M = 1e-6  # measures that agree to a thousandth of a millimetre agree: estimate
_PRINTED_M = 0.001  # rule books print no finer than this: common practice, no source

#: what is believed, in metres; a longer floor is usually feet taken for metres
_BELIEVED_M = {
    "length": (8.0, 35.0),  # estimate
    "width": (5.0, 20.0),  # estimate
    "basket_height": (1.2, 3.2),  # estimate; the lowest published ring is 6 ft, 1.83 m (world coaches' manual, under 6)
}
_MAY_BE_NOTHING = frozenset({"centre_line_overrun"})
_NAMES = {
    "arc_radius": "arc",
    "corner_three_from_centre_line": "corner distance",
    "free_throw_line_from_baseline": "free-throw line from the baseline",
    "free_throw_line_to_board": "free-throw line to the board",
    "no_charge_radius": "no-charge radius",
}


def checked(court: Court) -> Court:
    """The same court. Raises: CourtError naming every contradiction, and both measures of each, in one message."""
    found = contradictions(court)
    if not found:
        return court
    raise CourtError(f'The court "{court.name}" cannot be: {"; ".join(found)}. Measure these again.')


def contradictions(court: Court) -> tuple[str, ...]:
    """Every contradiction in the measures of a court, in a coach's words; empty for a court that can be."""
    nothing = tuple(_nothing(court))  # no measure can be compared with one that is no length at all
    return nothing or (*_unbelievable(court), *_floor(court), *_lane(court), *_arc(court))


def _nothing(court: Court) -> Iterator[str]:
    for key, measure in court.measures.items():
        value = measure.value_m
        if value is None or measure.source.status is Status.COMPUTED:
            continue
        if not math.isfinite(value) or value < 0 or (value == 0 and key not in _MAY_BE_NOTHING):
            yield f"the {_name(key)} is {value:g} m, it must be more than nothing"


def _unbelievable(court: Court) -> Iterator[str]:
    for key, (low_m, high_m) in _BELIEVED_M.items():
        value = court.measures[key].m
        if not low_m <= value <= high_m:
            hint = f" (if feet were meant, {value:g} ft is {in_metres(value * 0.3048)})" if value > high_m else ""
            yield f"the {_name(key)} is {value:g} m, it must lie between {low_m:g} and {high_m:g} m{hint}"


def _floor(court: Court) -> Iterator[str]:
    if court.width.m > court.length.m + _SLACK_M:
        yield f"{_say(court, 'width')} is more than {_say(court, 'length')}, which runs from baseline to baseline"
    if court.basket_from_baseline.m < court.board_from_baseline.m + court.ring_inner_diameter.m / 2 - _SLACK_M:
        yield (
            f"{_say(court, 'basket_from_baseline')} puts the ring behind the board: "
            f"{_say(court, 'board_from_baseline')}, {_say(court, 'ring_inner_diameter')}"
        )
    if court.mid_court_y_m < _SLACK_M:
        yield f"{_say(court, 'basket_from_baseline')} is beyond mid-court: {_say(court, 'length')}"


def _lane(court: Court) -> Iterator[str]:
    line = _say(court, "free_throw_line_from_baseline")
    from_board_m = court.board_from_baseline.m + court.free_throw_line_to_board.m
    if court.free_throw_y_m > court.mid_court_y_m + _SLACK_M:
        yield f"{line} is beyond mid-court: {_say(court, 'length')}"
    if court.free_throw_y_m <= _SLACK_M:
        yield f"{line} is behind the basket: {_say(court, 'basket_from_baseline')}"
    if abs(from_board_m - court.free_throw_line_from_baseline.m) > _PRINTED_M:
        yield (
            f"{line} is not {_of(from_board_m)}, which {_say(court, 'board_from_baseline')} and "
            f"{_say(court, 'free_throw_line_to_board')} give"
        )
    if court.lane_width.m > court.width.m + _SLACK_M:
        yield f"{_say(court, 'lane_width')} is more than {_say(court, 'width')}"


def _arc(court: Court) -> Iterator[str]:
    if not court.has_arc:
        return
    arc, sideline = _say(court, "arc_radius"), f"the sideline, {_of(court.half_width_m)} from the axis"
    if court.corner_three_from_centre_line.value_m is None:
        yield f"{arc} but no corner distance"
        return
    arc_m, corner_m = court.arc_radius.m, court.corner_three_from_centre_line.m
    corner = _say(court, "corner_three_from_centre_line")
    if corner_m > court.half_width_m + _SLACK_M:
        wide = arc if abs(arc_m - corner_m) < _SLACK_M else corner
        yield f"{wide} is wider than the floor: it crosses {sideline}, {_say(court, 'width')}"
    if corner_m > arc_m + _SLACK_M:
        yield f"{corner} is more than {arc}"
    if arc_m > court.mid_court_y_m + _SLACK_M:
        yield f"{arc} reaches beyond mid-court, {_of(court.mid_court_y_m)} from the basket: {_say(court, 'length')}"
    if court.lane_width.m / 2 > corner_m + _SLACK_M:
        yield f"{_say(court, 'lane_width')} is more than twice {corner}"
    if court.free_throw_y_m > arc_m + _SLACK_M:
        line = _say(court, "free_throw_line_from_baseline")
        yield f"{line} lies {_of(court.free_throw_y_m)} from the basket, beyond {arc}"
    if court.no_charge_radius.value_m is not None and court.no_charge_radius.m > arc_m:
        yield f"{_say(court, 'no_charge_radius')} is more than {arc}"


def _name(key: str) -> str:
    return _NAMES.get(key, key.replace("_", " "))


def _say(court: Court, key: str) -> str:
    return f"{_name(key)} {_of(court.measures[key].m)}"


def _of(length_m: float) -> str:
    return f"{in_metres(length_m)} ({in_feet(length_m)})"
