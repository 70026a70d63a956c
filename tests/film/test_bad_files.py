"""A film that cannot be shown gets one error that names the file, the row, the column, and what would be right."""

import gzip
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pyarrow as pa
import pyarrow.parquet
import pytest

from backcut.errors import FilmError
from backcut.film.reader import Ask
from backcut.film.reading import read_film
from backcut.film.stated import Origin, Stated, Units

from .invented import Row, Sample

# the sample has one header line and one line of names, so its first row of data, the ball at 0 s, is row 3 of the file;
# row 4 is attacker 1, row 9 defender X1, row 14 the ball at 0.1 s
DEFENDERS = ("X1", "X2", "X3", "X4", "X5")
STATED = Stated(units=Units.M, origin=Origin.CORNER)


def moved(sample: Sample, who: tuple[str, ...], **change: Any) -> tuple[Row, ...]:
    """The rows with those of some entities changed, each field by a value or by a function of the row."""

    def new(row: Row) -> Row:
        return replace(row, **{name: value(row) if callable(value) else value for name, value in change.items()})

    return tuple(new(row) if row.entity in who else row for row in sample.rows)


@pytest.mark.parametrize(
    ("cell", "says"),
    [
        ((4, "x", "abc"), 'row 7, column x: "abc" is not a number; write a number such as 12.4'),
        ((4, "x", ""), "row 7, column x: is not a finite number"),
        ((9, "y", "inf"), 'row 12, column y: "inf" is not a finite number'),
        ((9, "entity", " "), "row 12, column entity: .* is empty; every row needs one"),
        ((9, "team", "bench"), "row 12, column team: X4 is bench here and defence elsewhere"),
        ((12, "team", "defence"), "row 15, column team: 1 is defence here and offence elsewhere"),
        ((12, "t", "0"), "row 15: 1 stands at 0.000 s already in row 4; each entity has one row a moment"),
        ((12, "x", "2"), r"row 15, columns x and y: 1 goes from \(18.925, 7.5\) to \(2, 7.5\), 16.9 m in 0.10 s"),
        ((11, "x", "1"), r"row 14, columns x and y: ball goes from .* faster than any ball"),
        ((2, "y", "-80"), r"row 5, columns x and y: 2 stands \(21.225, -80\), more than 5 m off a FIBA court"),
    ],
)
def test_a_bad_cell_is_named_by_row_and_column(sample: Sample, cell: tuple[int, str, str], says: str) -> None:
    with pytest.raises(FilmError, match=f"^sample.csv, {says}"):
        read_film(sample.having(cells=(cell,)).csv(), STATED)


def test_rows_are_counted_as_an_editor_counts_lines(sample: Sample) -> None:
    path = sample.having(header=("court: fiba", "units: m", "origin: corner"), cells=((4, "x", "abc"),)).csv()
    with pytest.raises(FilmError, match=r'^sample.csv, row 9, column x: "abc"'):
        read_film(path)


def test_a_side_that_is_neither_offence_nor_defence_is_named(sample: Sample) -> None:
    rows = moved(sample, ("X4",), team="bench")
    with pytest.raises(
        FilmError, match=r'row 12, column team: "bench"; it should hold offence, defence and ball, or ball and'
    ):
        read_film(sample.having(rows=rows).csv(), STATED)


def test_a_row_with_too_few_cells_is_named(sample: Sample) -> None:
    lines = sample.lines()
    lines[10] = "0.0,X3"
    with pytest.raises(FilmError, match=r'^sample.csv, row 11: 2 cells where the columns are 5 \("0.0,X3"\)'):
        read_film(sample.write("\n".join(lines)), STATED)


def test_a_missing_player_is_named_with_his_moment(sample: Sample) -> None:
    rows = tuple(row for row in sample.rows if not (row.entity == "3" and 0.9 < row.t < 1.25))
    with pytest.raises(
        FilmError, match=r"3 has no row at 1.000 s; .* 3 of 31 moments .* from 1.000 to 1.200 s: fill them"
    ):
        read_film(sample.having(rows=rows).csv(), STATED)


def test_four_attackers_are_no_possession(sample: Sample) -> None:
    rows = tuple(row for row in sample.rows if row.entity != "3")
    with pytest.raises(
        FilmError, match=r'4 entities have the team "offence" \(1, 2, 4, 5\); a possession needs 5 attackers'
    ):
        read_film(sample.having(rows=rows).csv(), STATED)


def test_a_clock_that_jumps_is_named_with_the_way_round_it(sample: Sample) -> None:
    rows = tuple(replace(row, t=row.t + (7.0 if row.t > 1.05 else 0.0)) for row in sample.rows)
    path = sample.having(rows=rows).csv()
    with pytest.raises(FilmError, match=r"row 124: the clock jumps from 1.000 to 8.100 s where a step is 0.100 s"):
        read_film(path, STATED)
    assert read_film(path, STATED, from_s=8.0).start_s == pytest.approx(8.1)


def test_a_clock_that_goes_back_is_named(sample: Sample) -> None:
    first, second = sample.rows[:11], sample.rows[11:22]
    rows = (*second, *first, *sample.rows[22:])
    with pytest.raises(FilmError, match=r"the clock goes back from 0.100 s in row 3 to 0.000 s"):
        read_film(sample.having(rows=rows).csv(), STATED)


def test_a_defence_in_feet_beside_an_offence_in_metres_is_seen(sample: Sample) -> None:
    rows = moved(sample, DEFENDERS, x=lambda r: 7.5 - (7.5 - r.x) / 0.3048, y=lambda r: 26.4 - (26.4 - r.y) / 0.3048)
    with pytest.raises(
        FilmError, match=r"nearest attacker is .* m from the defenders; all eleven should be in the same units"
    ):
        read_film(sample.having(rows=rows).csv(), STATED)


def test_units_that_change_half_way_are_seen_at_the_row(sample: Sample) -> None:
    feet = sample.having(per_metre=1 / 0.3048).lines()
    metres = sample.lines()
    text = "\n".join(metres[: 2 + 11 * 15] + feet[2 + 11 * 15 :])
    with pytest.raises(
        FilmError, match=r"sample.csv, row 16[89], columns x and y: .* the units should not change|off a FIBA"
    ):
        read_film(sample.write(text), STATED)


def test_frames_need_a_rate_and_a_rate_must_fit_the_clock(sample: Sample) -> None:
    lines = sample.lines()
    frames = [lines[0], lines[1].replace("t,", "frame,", 1)]
    frames += [f"{round(float(line.split(',', 1)[0]) * 10)},{line.split(',', 1)[1]}" for line in lines[2:]]
    path = sample.write("\n".join(frames), "frames.csv")
    with pytest.raises(FilmError, match=r"time is counted in frames; state how many a second with --rate"):
        read_film(path, STATED)
    assert read_film(path, Stated(rate_hz=10.0)).duration_s == pytest.approx(3.0)
    with pytest.raises(FilmError, match=r"column t: 25 frames a second are stated, but its steps make 10"):
        read_film(sample.csv(), Stated(rate_hz=25.0))


def test_the_court_is_asked_for(sample: Sample) -> None:
    with pytest.raises(FilmError, match=r"nobody states the court; add --court with one of .*fiba"):
        read_film(sample.having(header=()).csv())
    with pytest.raises(FilmError, match=r'sample.csv: No court is called "parquet"'):
        read_film(sample.having(header=("court: parquet",)).csv())


def test_a_header_word_nobody_knows_is_refused(sample: Sample) -> None:
    with pytest.raises(
        FilmError, match=r'sample.csv, header: nothing is called "unit" here; what can be stated: units, '
    ):
        read_film(sample.having(header=("unit: m",)).csv())
    with pytest.raises(FilmError, match=r'sample.csv, header: units cannot be "yards"; write one of: m, ft, cm, auto'):
        read_film(sample.having(header=("units: yards",)).csv())


@pytest.mark.parametrize(
    ("name", "data", "says"),
    [
        ("empty.csv", b"", "is in no format that can be read"),
        ("names.csv", b"t,entity,team,x,y\n", "there are column names but no rows"),
        ("short.csv", b"t,entity,team,x\n0,1,offence,2\n", "there is no column y; the columns are t, entity, team, x"),
        ("twice.csv", b"t,entity,team,x,x,y\n0,1,offence,2,2,3\n", "row 1: two columns are called x"),
        ("latin.csv", "t,entity,team,x,y\n0,Jos\xe9,offence,1,2\n".encode("latin-1"), "is in no format|not UTF-8"),
        ("cut.csv.gz", gzip.compress(b"t,entity,team,x,y\n" * 99, mtime=0)[:30], "the file cannot be read"),
        ("torn.parquet", b"PAR1 and no more", "the Parquet file is damaged"),
        ("photo.csv", b"\xff\xd8\xff\xe0" * 40, "is in no format that can be read"),
    ],
    ids=["empty", "names", "short", "twice", "latin", "cut", "torn", "photo"],
)
def test_a_file_that_is_no_film_says_why(tmp_path: Path, name: str, data: bytes, says: str) -> None:
    path = tmp_path / name
    path.write_bytes(data)
    with pytest.raises(FilmError, match=says):
        read_film(path, STATED)


def test_a_file_that_is_not_there_says_so(tmp_path: Path) -> None:
    with pytest.raises(FilmError, match=r"nowhere.csv: the file cannot be read"):
        read_film(tmp_path / "nowhere.csv")


def test_a_parquet_column_of_the_wrong_kind_is_named(tmp_path: Path) -> None:
    table = pa.table({"t": [True], "entity": ["ball"], "team": ["ball"], "x": [1.0], "y": [2.0]})
    pyarrow.parquet.write_table(table, tmp_path / "kind.parquet")
    with pytest.raises(FilmError, match=r"kind.parquet, column t: it holds bool; it should hold numbers"):
        read_film(tmp_path / "kind.parquet")


def test_a_ball_height_that_comes_and_goes_is_named(sample: Sample) -> None:
    lines = sample.lines()
    text = [lines[0], lines[1] + ",z", *(f"{line}," if i == 11 else f"{line},1.0" for i, line in enumerate(lines[2:]))]
    with pytest.raises(
        FilmError, match=r"row 14, column z: the height of the ball is missing at 0.100 s but given elsewhere"
    ):
        read_film(sample.write("\n".join(text)), STATED)


def test_several_clips_are_asked_for_one(sample: Sample) -> None:
    lines = sample.lines()
    text = [lines[0], lines[1] + ",clip", *(f"{line},{'a' if i < 170 else 'b'}" for i, line in enumerate(lines[2:]))]
    path = sample.write("\n".join(text))
    with pytest.raises(FilmError, match=r"2 clips stand in this file; name one with --clip: a, b"):
        read_film(path, STATED)
    with pytest.raises(FilmError, match=r'no clip is called "c"; the clips are a, b'):
        read_film(path, STATED, Ask("c"))
    with pytest.raises(FilmError, match=r"--clip c was asked for, but there is no column that names clips"):
        read_film(sample.csv("one.csv"), STATED, Ask("c"))


def test_every_error_ends_as_a_sentence(sample: Sample) -> None:
    for one, two in pairwise([(4, "x", "abc"), (4, "x", "2"), (9, "team", "bench")]):
        for cell in (one, two):
            with pytest.raises(FilmError) as error:
                read_film(sample.having(cells=(cell,)).csv(), STATED)
            assert str(error.value).endswith(".")
