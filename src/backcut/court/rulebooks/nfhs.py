"""The court of American high schools, read in nfhs.pdf (2018), kept in rule-books/basketball of sportypy 53575a1."""

from backcut.court.measure import Edge, Rulebook, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks
from backcut.court.units import feet

_BOOK = Rulebook("NFHS Basketball Rules 2018")
_FIGURE = "Figure 1-1"

COURT = Court(
    name="nfhs",
    title="NFHS (American high schools)",
    edition=_BOOK.edition,
    length=_BOOK.says(feet(84), Edge.INNER, _FIGURE, note="optimum"),
    width=_BOOK.says(feet(50), Edge.INNER, _FIGURE, note="optimum"),
    line_width=_BOOK.says(feet(0, 2), Edge.NO_LINE, _FIGURE, note="boundary lines: at least 2 in"),
    board_from_baseline=_BOOK.says(feet(4), Edge.INNER, _FIGURE, note="to the face of the board"),
    basket_from_baseline=_BOOK.says(feet(0, 63), Edge.INNER, _FIGURE, note="63 in drawn"),
    basket_height=_BOOK.says(feet(10), Edge.NO_LINE, "Rule 1"),
    ring_inner_diameter=_BOOK.says(feet(0, 18), Edge.NO_LINE, "Rule 1"),
    board_width=_BOOK.says(feet(0, 72), Edge.NO_LINE, "Rule 1", note="54 in boards are also allowed"),
    arc_radius=_BOOK.says(feet(19, 9), Edge.OUTER, _FIGURE),
    corner_three_from_centre_line=_BOOK.says(feet(19, 9), Edge.OUTER, _FIGURE, note="straight from the basket's level"),
    free_throw_line_from_baseline=_BOOK.says(feet(19), Edge.OUTER, _FIGURE, note="far edge"),
    free_throw_line_to_board=_BOOK.says(feet(15), Edge.OUTER, _FIGURE, note="far edge to the face of the board"),
    free_throw_circle_radius=_BOOK.says(feet(6), Edge.OUTER, _FIGURE),
    lane_width=_BOOK.says(feet(12), Edge.OUTER, _FIGURE),
    no_charge_radius=_BOOK.has_none(_FIGURE),
    centre_circle_radius=_BOOK.says(feet(6), Edge.OUTER, _FIGURE),
    centre_circle_inner_radius=_BOOK.has_none(_FIGURE),
    centre_line_overrun=_BOOK.has_none(_FIGURE),
    lane_marks=LaneMarks(
        marks=(
            LaneMark(feet(7), feet(8), feet(0, 8)),  # from memory; the block
            LaneMark(feet(11), feet(11, 2), feet(0, 8)),  # from memory
            LaneMark(feet(14, 2), feet(14, 4), feet(0, 8)),  # from memory
            LaneMark(feet(17, 4), feet(17, 6), feet(0, 8)),  # from memory
        ),
        block_m=feet(8),
        source=Source(_BOOK.edition, _FIGURE, Status.MEMORY),
    ),
    short_floor_division_m=(feet(74), feet(40)),  # NFHS 2018, Figure 1-1
)
