"""The NBA court, read in nba.pdf, pages 8-10, kept in rule-books/basketball of sportypy 53575a1."""

from backcut.court.measure import Edge, Rulebook, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks, ThrowIn
from backcut.court.units import feet

_SPORTYPY = "sportypy 53575a1"  # github.com/sportsdataverse/sportypy, data/surface_dimensions.json
_BOOK = Rulebook("NBA Official Rules 2021-22")

COURT = Court(
    name="nba",
    title="NBA",
    edition=_BOOK.edition,
    length=_BOOK.says(feet(94), Edge.INNER, "Rule 1, Section I"),
    width=_BOOK.says(feet(50), Edge.INNER, "Rule 1, Section I"),
    line_width=_BOOK.says(feet(0, 2), Edge.NO_LINE, "Rule 1, Section I"),
    board_from_baseline=_BOOK.says(feet(4), Edge.INNER, "Rule 1, Section II", note="to the face of the board"),
    basket_from_baseline=_BOOK.says(
        feet(5, 3),
        Edge.INNER,
        "Rule 1, Section II",
        status=Status.COMPUTED,
        note="4 ft to the board, 6 in gap, 9 in ring radius",
    ),
    basket_height=_BOOK.says(feet(10), Edge.NO_LINE, "Rule 1, Section II-d"),
    ring_inner_diameter=_BOOK.says(feet(0, 18), Edge.NO_LINE, "Rule 1, Section II-e"),
    board_width=_BOOK.says(feet(6), Edge.NO_LINE, "Rule 1, Section II-a"),
    arc_radius=_BOOK.says(feet(23, 9), Edge.OUTER, "Rule 1, Section I-d"),
    corner_three_from_centre_line=_BOOK.says(
        feet(22), Edge.OUTER, "Rule 1, Section I-d", note="3 ft from the sideline; the diagram prints 14 ft straight"
    ),
    free_throw_line_from_baseline=_BOOK.says(feet(19), Edge.OUTER, "Rule 1, Section I", note="far edge"),
    free_throw_line_to_board=_BOOK.says(
        feet(15), Edge.OUTER, "Rule 1, Section I-c", note="far edge to the face of the board"
    ),
    free_throw_circle_radius=_BOOK.says(feet(6), Edge.OUTER, "Rule 1, Section I"),
    lane_width=_BOOK.says(feet(16), Edge.OUTER, "Rule 1, Section I"),
    no_charge_radius=_BOOK.says(
        feet(4), Edge.INNER, "Rule 1, Section I-i", note="then straight to the face of the board"
    ),
    centre_circle_radius=_BOOK.says(feet(6), Edge.OUTER, "Rule 1, Section I"),
    centre_circle_inner_radius=_BOOK.says(feet(2), Edge.INNER, "Rule 1, Section I"),
    centre_line_overrun=_BOOK.has_none("Rule 1, Section I"),
    lane_marks=LaneMarks(
        marks=(
            LaneMark(feet(7), feet(7, 2), feet(0, 6)),  # sportypy 53575a1; baseline side of the block
            LaneMark(feet(8), feet(8, 2), feet(0, 6)),  # sportypy 53575a1; far side of the block
            LaneMark(feet(11, 2), feet(11, 4), feet(0, 6)),  # sportypy 53575a1
            LaneMark(feet(14, 4), feet(14, 6), feet(0, 6)),  # sportypy 53575a1
        ),
        block_m=feet(8, 2),
        source=Source(_BOOK.edition, "Rule 1, diagram", Status.RESTATED, _SPORTYPY),
    ),
    throw_in=ThrowIn(
        from_baseline=_BOOK.says(feet(28), Edge.OUTER, "Rule 1, Section I", note="edge from memory"),
        inward_m=feet(3),  # sportypy 53575a1
        outward_m=0.0,
        both_sides=True,  # sportypy 53575a1
    ),
    free_throw_circle_dashed=True,  # the half inside the lane: sportypy 53575a1
)
