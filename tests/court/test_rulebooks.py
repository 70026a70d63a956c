"""Every number of every court against the rule book that prints it; the source stands beside each."""

import json
import pkgutil

import pytest

from backcut.court import rulebooks
from backcut.court.courts import COURTS, court
from backcut.court.measure import Status
from backcut.court.record import Court
from backcut.errors import CourtError

FT, IN = 0.3048, 0.0254

FIBA = "FIBA Official Basketball Rules 2024"
NBA = "NBA Official Rules 2021-22"
WNBA = "WNBA Official Rules 2021"
NCAA = "NCAA Basketball Rules 2021-22"
NFHS = "NFHS Basketball Rules 2018"
MINI = "FIBA Mini-Basketball Rules 2005"

PRINTED = [
    ("fiba", "length", 28.0, "inner", FIBA, "Art. 2.1"),
    ("fiba", "width", 15.0, "inner", FIBA, "Art. 2.1"),
    ("fiba", "line_width", 0.05, "no line", FIBA, "Art. 2.4"),
    ("fiba", "board_from_baseline", 1.20, "inner", FIBA, "Art. 2.4.3"),
    ("fiba", "basket_from_baseline", 1.575, "inner", FIBA, "Art. 2.4.4"),
    ("fiba", "arc_radius", 6.75, "outer", FIBA, "Art. 2.4.4"),
    ("fiba", "corner_three_from_centre_line", 6.60, "outer", FIBA, "Art. 2.4.4"),
    ("fiba", "lane_width", 4.90, "outer", FIBA, "Art. 2.4.3"),
    ("fiba", "free_throw_line_from_baseline", 5.80, "outer", FIBA, "Art. 2.4.3"),
    ("fiba", "free_throw_line_to_board", 4.60, "outer", FIBA, "Art. 2.4.3"),
    ("fiba", "free_throw_circle_radius", 1.80, "outer", FIBA, "Art. 2.4.3"),
    ("fiba", "no_charge_radius", 1.25, "inner", FIBA, "Art. 2.4.7"),
    ("fiba", "centre_circle_radius", 1.80, "outer", FIBA, "Art. 2.4.2"),
    ("fiba", "centre_line_overrun", 0.15, "outer", FIBA, "Art. 2.4.2"),
    ("fiba", "throw_in_from_baseline", 8.325, "outer", FIBA, "Art. 2.4.6"),
    ("fiba", "basket_height", 3.05, "no line", FIBA, "Art. 3, equipment"),
    ("nba", "length", 94 * FT, "inner", NBA, "Rule 1, Section I"),
    ("nba", "width", 50 * FT, "inner", NBA, "Rule 1, Section I"),
    ("nba", "line_width", 2 * IN, "no line", NBA, "Rule 1, Section I"),
    ("nba", "basket_from_baseline", 4 * FT + 6 * IN + 9 * IN, "inner", NBA, "Rule 1, Section II"),
    ("nba", "arc_radius", 23 * FT + 9 * IN, "outer", NBA, "Rule 1, Section I-d"),
    ("nba", "corner_three_from_centre_line", 22 * FT, "outer", NBA, "Rule 1, Section I-d"),
    ("nba", "lane_width", 16 * FT, "outer", NBA, "Rule 1, Section I"),
    ("nba", "free_throw_line_from_baseline", 19 * FT, "outer", NBA, "Rule 1, Section I"),
    ("nba", "free_throw_line_to_board", 15 * FT, "outer", NBA, "Rule 1, Section I-c"),
    ("nba", "no_charge_radius", 4 * FT, "inner", NBA, "Rule 1, Section I-i"),
    ("nba", "centre_circle_inner_radius", 2 * FT, "inner", NBA, "Rule 1, Section I"),
    ("nba", "throw_in_from_baseline", 28 * FT, "outer", NBA, "Rule 1, Section I"),
    ("nba", "basket_height", 10 * FT, "no line", NBA, "Rule 1, Section II-d"),
    ("nba", "board_width", 6 * FT, "no line", NBA, "Rule 1, Section II-a"),
    ("wnba", "arc_radius", 22 * FT + 1.75 * IN, "outer", WNBA, "Rule 1, Section I-d"),
    ("wnba", "corner_three_from_centre_line", 22 * FT, "outer", WNBA, "Rule 1, Section I-d"),
    ("wnba", "lane_width", 16 * FT, "outer", WNBA, "Rule 1, Section I"),
    ("wnba", "no_charge_radius", 4 * FT, "inner", WNBA, "Rule 1, Section I-i"),
    ("ncaa", "arc_radius", 22 * FT + 1.75 * IN, "outer", NCAA, "Rule 1, court diagram"),
    ("ncaa", "corner_three_from_centre_line", 25 * FT - 40.125 * IN, "outer", NCAA, "Rule 1, court diagram"),
    ("ncaa", "lane_width", 12 * FT, "outer", NCAA, "Rule 1, court diagram"),
    ("ncaa", "free_throw_line_from_baseline", 19 * FT, "outer", NCAA, "Rule 1, court diagram"),
    ("nfhs", "length", 84 * FT, "inner", NFHS, "Figure 1-1"),
    ("nfhs", "width", 50 * FT, "inner", NFHS, "Figure 1-1"),
    ("nfhs", "basket_from_baseline", 63 * IN, "inner", NFHS, "Figure 1-1"),
    ("nfhs", "arc_radius", 19 * FT + 9 * IN, "outer", NFHS, "Figure 1-1"),
    ("nfhs", "corner_three_from_centre_line", 19 * FT + 9 * IN, "outer", NFHS, "Figure 1-1"),
    ("nfhs", "lane_width", 12 * FT, "outer", NFHS, "Figure 1-1"),
    ("nfhs", "free_throw_line_from_baseline", 19 * FT, "outer", NFHS, "Figure 1-1"),
    ("nfhs", "no_charge_radius", None, "no line", NFHS, "Figure 1-1"),
    ("mini", "length", 28.0, "inner", MINI, "Art. 2"),
    ("mini", "width", 15.0, "inner", MINI, "Art. 2"),
    ("mini", "free_throw_line_to_board", 4.00, "outer", MINI, "Art. 2"),
    ("mini", "basket_height", 2.60, "no line", MINI, "Art. 4"),
    ("mini", "arc_radius", None, "no line", MINI, "Art. 3"),
]


@pytest.mark.parametrize(("name", "key", "metres", "edge", "edition", "clause"), PRINTED)
def test_a_court_says_what_its_rule_book_prints(
    name: str, key: str, metres: float | None, edge: str, edition: str, clause: str
) -> None:
    measure = court(name).measures[key]
    assert measure.value_m == (None if metres is None else pytest.approx(metres, abs=1e-12))
    assert measure.edge == edge
    assert (measure.source.edition, measure.source.clause) == (edition, clause)


# FIBA 2.990 m and NCAA 9.881 ft follow from the printed arcs by Pythagoras; NBA Official Rules 2021-22, Rule 1,
# diagram, prints 14 ft for what is 14.198 ft; NFHS 2018, Figure 1-1: straight as far as the basket's level, 63 in
@pytest.mark.parametrize(
    ("name", "straight_m"), [("fiba", 2.990), ("nba", 14.198 * FT), ("ncaa", 9.881 * FT), ("nfhs", 5.25 * FT)]
)
def test_the_arc_meets_the_straight_part_where_geometry_says(name: str, straight_m: float) -> None:
    assert court(name).straight_part_from_baseline.m == pytest.approx(straight_m, abs=0.001)


def test_the_fiba_junction_lies_1_4151_m_above_the_basket() -> None:
    junction_m = court("fiba").junction_m
    assert junction_m == pytest.approx((6.60, 1.4151), abs=0.0001)  # 6.75 and 6.60 m, FIBA 2024, Art. 2.4.4


def test_the_free_throw_line_is_as_far_from_the_basket_as_the_books_say() -> None:
    assert court("fiba").free_throw_y_m == pytest.approx(4.225)  # FIBA 2024, Art. 2.4.3: 4.60 m less 0.375 m
    for name in ("nba", "wnba", "ncaa", "nfhs"):
        assert court(name).free_throw_y_m == pytest.approx(13.75 * FT)  # 15 ft less 1 ft 3 in: Rule 1 of each


def test_mini_says_the_other_ring_height() -> None:
    # FIBA Mini-Basketball Rules 2005, Art. 4: 2.60 m under 11, 3.05 m at 11 and 12
    assert "3.05 m at 11 and 12" in court("mini").basket_height.note


def test_a_court_is_found_in_any_case_and_an_unknown_one_names_the_known() -> None:
    assert court(" FIBA ") is COURTS["fiba"]
    with pytest.raises(CourtError, match=r'"olympia".*fiba, mini, nba, ncaa, nfhs, wnba'):
        court("olympia")


def test_every_file_of_the_rule_books_is_one_court() -> None:
    files = {module.name for module in pkgutil.iter_modules(rulebooks.__path__)}
    assert files == set(COURTS)


@pytest.mark.parametrize("record", COURTS.values(), ids=COURTS)
def test_every_number_carries_an_edition_a_clause_and_an_edge(record: Court) -> None:
    for key, measure in record.measures.items():
        assert measure.source.edition == record.edition, key
        assert measure.source.clause, key
        assert measure.edge, key


def test_json_has_the_ten_agreed_keys_and_null_where_there_is_nothing() -> None:
    keys = [
        "length",
        "width",
        "basket_from_baseline",
        "arc_radius",
        "corner_three_from_centre_line",
        "straight_part_from_baseline",
        "free_throw_line_from_baseline",
        "lane_width",
        "no_charge_radius",
        "basket_height",
    ]
    for record in COURTS.values():
        told = json.loads(json.dumps(record.to_dict()))
        assert set(keys) <= told.keys()
        assert set(told["edges"]) <= told["sources"].keys()
    mini = COURTS["mini"].to_dict()
    assert [key for key in keys if mini[key] is None] == [
        "arc_radius",
        "corner_three_from_centre_line",
        "straight_part_from_baseline",
        "no_charge_radius",
    ]


def test_what_is_remembered_and_not_read_says_so() -> None:
    marks = COURTS["nfhs"].lane_marks
    assert marks is not None
    assert marks.source.status is Status.MEMORY
    assert COURTS["mini"].lane_width.source.status is Status.MEMORY
