"""The FIBA court. The 2026 edition may renumber its articles; the edition stands beside every number."""

from backcut.court.measure import Edge, Rulebook, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks, ThrowIn

_SPORTYPY = "sportypy 53575a1"  # github.com/sportsdataverse/sportypy, data/surface_dimensions.json
_BOOK = Rulebook("FIBA Official Basketball Rules 2024", Status.RESTATED, _SPORTYPY)
_WA = "Sports dimensions guide, Government of Western Australia"
_NUMBER = "article number from memory"

COURT = Court(
    name="fiba",
    title="FIBA",
    edition=_BOOK.edition,
    length=_BOOK.says(28.0, Edge.INNER, "Art. 2.1", via=_WA, note=_NUMBER),
    width=_BOOK.says(15.0, Edge.INNER, "Art. 2.1", via=_WA, note=_NUMBER),
    line_width=_BOOK.says(0.05, Edge.NO_LINE, "Art. 2.4", via=_WA, note=_NUMBER),
    board_from_baseline=_BOOK.says(1.20, Edge.INNER, "Art. 2.4.3", note="to the face of the board"),
    basket_from_baseline=_BOOK.says(1.575, Edge.INNER, "Art. 2.4.4", note="to the centre of the basket"),
    basket_height=_BOOK.says(3.05, Edge.NO_LINE, "Art. 3, equipment", via="", note=_NUMBER),
    ring_inner_diameter=_BOOK.says(0.45, Edge.NO_LINE, "Art. 3, equipment", note=_NUMBER),
    board_width=_BOOK.says(1.80, Edge.NO_LINE, "Art. 3, equipment", note=_NUMBER),
    arc_radius=_BOOK.says(6.75, Edge.OUTER, "Art. 2.4.4"),
    corner_three_from_centre_line=_BOOK.says(6.60, Edge.OUTER, "Art. 2.4.4", note="0.90 m from the sideline"),
    free_throw_line_from_baseline=_BOOK.says(5.80, Edge.OUTER, "Art. 2.4.3", note="far edge"),
    free_throw_line_to_board=_BOOK.says(4.60, Edge.OUTER, "Art. 2.4.3", note="far edge to the face of the board"),
    free_throw_circle_radius=_BOOK.says(1.80, Edge.OUTER, "Art. 2.4.3"),
    lane_width=_BOOK.says(4.90, Edge.OUTER, "Art. 2.4.3"),
    no_charge_radius=_BOOK.says(1.25, Edge.INNER, "Art. 2.4.7", note="then straight to 1.20 m from the baseline"),
    centre_circle_radius=_BOOK.says(1.80, Edge.OUTER, "Art. 2.4.2", via=_WA, note=_NUMBER),
    centre_circle_inner_radius=_BOOK.has_none("Art. 2.4.2"),
    centre_line_overrun=_BOOK.says(0.15, Edge.OUTER, "Art. 2.4.2", via=_WA, note="beyond each sideline; " + _NUMBER),
    lane_marks=LaneMarks(
        marks=(
            LaneMark(1.75, 1.80, 0.10),  # sportypy 53575a1
            LaneMark(2.65, 3.05, 0.10),  # sportypy 53575a1; the block, also called the neutral zone
            LaneMark(3.90, 3.95, 0.10),  # sportypy 53575a1
            LaneMark(4.80, 4.85, 0.10),  # sportypy 53575a1
        ),
        block_m=3.05,
        source=Source(_BOOK.edition, "Art. 2.4.3, diagram", Status.RESTATED, _SPORTYPY),
    ),
    throw_in=ThrowIn(
        from_baseline=_BOOK.says(8.325, Edge.OUTER, "Art. 2.4.6", note=_NUMBER),
        inward_m=0.0,
        outward_m=0.15,  # sportypy 53575a1
        both_sides=False,  # opposite the scorer's table only: sportypy 53575a1
    ),
)
