"""The NCAA court, men since 2019-20 and women since 2021-22 (the women's year from memory)."""

from backcut.court.measure import Edge, Rulebook, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks, ThrowIn
from backcut.court.units import feet

_SPORTYPY = "sportypy 53575a1"  # github.com/sportsdataverse/sportypy, data/surface_dimensions.json
_BOOK = Rulebook("NCAA Basketball Rules 2021-22", Status.RESTATED, _SPORTYPY)
_RULE = "Rule 1, court diagram"  # the sections inside Rule 1 are not confirmed

COURT = Court(
    name="ncaa",
    title="NCAA",
    edition=_BOOK.edition,
    length=_BOOK.says(feet(94), Edge.INNER, _RULE),
    width=_BOOK.says(feet(50), Edge.INNER, _RULE),
    line_width=_BOOK.says(feet(0, 2), Edge.NO_LINE, _RULE),
    board_from_baseline=_BOOK.says(feet(4), Edge.INNER, _RULE, note="to the face of the board"),
    basket_from_baseline=_BOOK.says(feet(5, 3), Edge.INNER, _RULE, note="to the centre of the basket"),
    basket_height=_BOOK.says(feet(10), Edge.NO_LINE, "Rule 1, equipment", via=""),
    ring_inner_diameter=_BOOK.says(feet(0, 18), Edge.NO_LINE, "Rule 1, equipment"),
    board_width=_BOOK.says(feet(6), Edge.NO_LINE, "Rule 1, equipment"),
    arc_radius=_BOOK.says(
        feet(22, 1.75),
        Edge.OUTER,
        _RULE,
        note="men since 2019-20 (ncaa.com, 11 Dec 2019); women since 2021-22 from memory",
    ),
    corner_three_from_centre_line=_BOOK.says(feet(21, 7.875), Edge.OUTER, _RULE, note="40 1/8 in from the sideline"),
    free_throw_line_from_baseline=_BOOK.says(feet(19), Edge.OUTER, _RULE, note="far edge"),
    free_throw_line_to_board=_BOOK.says(feet(15), Edge.OUTER, _RULE, note="far edge to the face of the board"),
    free_throw_circle_radius=_BOOK.says(feet(6), Edge.OUTER, _RULE),
    lane_width=_BOOK.says(feet(12), Edge.OUTER, _RULE),
    no_charge_radius=_BOOK.says(feet(4), Edge.INNER, _RULE, note="3 ft before 2015 (courtdimensions.net)"),
    centre_circle_radius=_BOOK.says(feet(6), Edge.OUTER, _RULE),
    centre_circle_inner_radius=_BOOK.has_none(_RULE),
    centre_line_overrun=_BOOK.has_none(_RULE),
    lane_marks=LaneMarks(
        marks=(
            LaneMark(feet(7), feet(8), feet(0, 9)),  # sportypy 53575a1; the block
            LaneMark(feet(11), feet(11, 2), feet(0, 9)),  # sportypy 53575a1
            LaneMark(feet(14, 2), feet(14, 4), feet(0, 9)),  # sportypy 53575a1
            LaneMark(feet(17, 4), feet(17, 6), feet(0, 9)),  # sportypy 53575a1
        ),
        block_m=feet(8),
        source=Source(_BOOK.edition, _RULE, Status.RESTATED, _SPORTYPY),
    ),
    throw_in=ThrowIn(
        from_baseline=_BOOK.says(feet(28), Edge.OUTER, _RULE, note="edge from memory"),
        inward_m=feet(3),  # sportypy 53575a1
        outward_m=feet(3),  # sportypy 53575a1
        both_sides=False,  # sportypy 53575a1
    ),
)
