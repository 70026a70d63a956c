"""`backcut count` and `backcut formations`."""

from __future__ import annotations

from pathlib import Path

import pytest

from backcut.offence.formation import formations
from backcut.offence.library import preset_text

from .told import backcut


def test_five_out_by_neighbour_passes_as_data() -> None:
    said = backcut("count", "five-out", "--json")
    # 5! ways to stand, ball with any of five; the passes of every situation; computed, and the same in tests/oracle.
    assert (said.code, said.err) == (0, "")
    assert said.data == {"situations": 600, "moves": 960, "depth": 16}


def test_the_count_in_words() -> None:
    said = backcut("count", "five-out")
    assert "Five-out: 600 situations, 960 moves, the farthest 16 moves away (with pass)." in said.words


def test_more_moves_reach_no_fewer_situations() -> None:
    passes = backcut("count", "four-out", "--with", "pass", "--json").data
    skips = backcut("count", "four-out", "--with", " Pass , skip", "--json").data
    assert skips["situations"] > passes["situations"]
    assert skips["depth"] <= passes["depth"]


@pytest.mark.parametrize(
    ("words", "error"),
    [
        ("fly", '"fly" is no move that can be counted. There are: pass, skip, deny, dribble.'),
        ("pass,fly", '"fly" is no move that can be counted.'),
        ("", "No moves to try. Write --with pass,skip,deny,dribble or some of them."),
        (" , ", "No moves to try."),
    ],
)
def test_a_move_that_cannot_be_counted_is_named(words: str, error: str) -> None:
    said = backcut("count", "five-out", "--with", words)
    assert (said.code, said.out) == (2, "")
    assert said.err.startswith(error)


def test_a_book_with_problems_is_counted_and_its_problems_are_listed(tmp_path: Path) -> None:
    file = tmp_path / "ours.txt"
    file.write_text(preset_text("first-month") + "Coach: me\n", encoding="utf-8")
    said = backcut("count", file)
    assert said.code == 1
    assert '"coach" is no word of a book.' in said.out
    assert "600 situations" in said.words
    data = backcut("count", file, "--json")
    assert (data.code, data.data["situations"], len(data.data["problems"])) == (1, 600, 1)


def test_the_formations_as_data() -> None:
    rows = {row["name"]: row for row in backcut("formations", "--json").data}
    assert set(rows) == set(formations())
    for name, row in rows.items():
        known = formations()[name]
        assert row["ring"] == [str(spot) for spot in known.ring]
        assert row["start"] == {str(number): str(spot) for number, spot in known.situation().spots().items()}
        assert (row["ball"], row["court"], row["inside"]) == (1, "fiba", [str(spot) for spot in known.inside])
        assert [pair["spots"] for pair in row["pairs"]] == [
            [str(a), str(b)] for a, b in zip(known.ring, known.ring[1:], strict=False)
        ]
        assert all(pair["band"][0] < pair["band"][1] and pair["distance"] > 0 for pair in row["pairs"])


def test_spots_lie_closer_on_a_smaller_court() -> None:
    def top_to_wing(court: str) -> float:
        pairs = backcut("formations", "--court", court, "--json").data[0]["pairs"]
        return next(float(pair["distance"]) for pair in pairs if pair["spots"] == ["T", "RW"])

    assert top_to_wing("nfhs") < top_to_wing("fiba")


def test_the_formations_in_words() -> None:
    said = backcut("formations", "--court", "NFHS")
    assert said.code == 0
    for formation in formations().values():
        assert f"{formation.title} on " in said.words
        assert " ".join(formation.ring) in said.words
