"""The mini court for players of twelve and younger: no arc, lower ring, nearer free-throw line."""

from backcut.court.measure import Edge, Rulebook, Source, Status
from backcut.court.record import Court, LaneMark, LaneMarks

_BOOK = Rulebook("FIBA Mini-Basketball Rules 2005", Status.RESTATED, "scribd.com/document/41671246")
_LIKE_FIBA = "taken from the FIBA court, not confirmed for mini"

COURT = Court(
    name="mini",
    title="Mini (twelve and younger)",
    edition=_BOOK.edition,
    length=_BOOK.says(28.0, Edge.INNER, "Art. 2", note="may be scaled from 26 x 14 m down to 12 x 7 m"),
    width=_BOOK.says(15.0, Edge.INNER, "Art. 2", note="may be scaled from 26 x 14 m down to 12 x 7 m"),
    line_width=_BOOK.says(0.05, Edge.NO_LINE, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    board_from_baseline=_BOOK.says(
        1.20, Edge.INNER, "Art. 2", status=Status.MEMORY, note="to the face of the board; " + _LIKE_FIBA
    ),
    basket_from_baseline=_BOOK.says(1.575, Edge.INNER, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    basket_height=_BOOK.says(
        2.60, Edge.NO_LINE, "Art. 4", note="under 11; 3.05 m at 11 and 12; lower for the very young"
    ),
    ring_inner_diameter=_BOOK.says(0.45, Edge.NO_LINE, "Art. 4", status=Status.MEMORY, note=_LIKE_FIBA),
    board_width=_BOOK.says(1.80, Edge.NO_LINE, "Art. 4", status=Status.MEMORY, note=_LIKE_FIBA),
    arc_radius=_BOOK.has_none("Art. 3", note="mini has no three-point line"),
    corner_three_from_centre_line=_BOOK.has_none("Art. 3"),
    free_throw_line_from_baseline=_BOOK.says(
        5.20,
        Edge.OUTER,
        "Art. 2",
        status=Status.COMPUTED,
        note="4.00 m from the board, which hangs 1.20 m in; far edge",
    ),
    free_throw_line_to_board=_BOOK.says(4.00, Edge.OUTER, "Art. 2", note="far edge, as on the FIBA court"),
    free_throw_circle_radius=_BOOK.says(1.80, Edge.OUTER, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    lane_width=_BOOK.says(4.90, Edge.OUTER, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    no_charge_radius=_BOOK.has_none("Art. 2", note="none known for mini"),
    centre_circle_radius=_BOOK.says(1.80, Edge.OUTER, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    centre_circle_inner_radius=_BOOK.has_none("Art. 2"),
    centre_line_overrun=_BOOK.says(0.15, Edge.OUTER, "Art. 2", status=Status.MEMORY, note=_LIKE_FIBA),
    lane_marks=LaneMarks(
        marks=(
            LaneMark(1.75, 1.80, 0.10),  # from memory: as on the FIBA court
            LaneMark(2.65, 3.05, 0.10),  # from memory: as on the FIBA court; the block
            LaneMark(3.90, 3.95, 0.10),  # from memory: as on the FIBA court
        ),
        block_m=3.05,
        source=Source(_BOOK.edition, "Art. 2", Status.MEMORY),
    ),
    floors_m=((28.0, 15.0), (12.0, 7.0)),  # FIBA Mini-Basketball Rules 2005, Art. 2
    kept_when_scaled=("free_throw_line_from_baseline", "free_throw_line_to_board"),  # Art. 2 names one distance for all
)
