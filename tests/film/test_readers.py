"""Each format is one file found by scanning; every file is read by exactly one of them."""

import csv
import gzip
import io
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.parquet
import pytest

from backcut.errors import FilmError
from backcut.film.reader import Ask, reader_of, readers
from backcut.film.reading import read_film, read_rows
from backcut.film.stated import Stated
from backcut.film.tidy import header_of, write_tidy

from .invented import Sample

META = "clip,offence,attack,quality\n7,visitor,low_x,ok\n8,home,high_x,pbp_far\n"


def clips(folder: Path, *, meta: str = META) -> Path:
    """Two invented clips in the layout of the made-basket clips: nobody moves; clip 8 is clip 7 turned round."""
    home = [(20.0, 25.0), (15.0, 10.0), (15.0, 40.0), (10.0, 5.0), (10.0, 45.0)]
    visitor = [(28.0, 25.0), (19.0, 8.0), (19.0, 42.0), (6.0, 3.0), (6.0, 47.0)]
    seven = np.array([(28.0, 24.0), *home, *visitor])
    eight = np.array([94.0, 50.0]) - np.array([(28.0, 24.0), *visitor, *home])
    names = ["ball", *(f"{side}{i}" for side in "hv" for i in range(1, 6))]
    rows = [(clip, frame, *(places.ravel() * 100)) for clip, places in ((7, seven), (8, eight)) for frame in range(4)]
    columns = ["clip", "frame", *(f"{name}_{axis}" for name in names for axis in "xy")]
    table = pa.table({name: pa.array([int(row[i]) for row in rows], pa.int16()) for i, name in enumerate(columns)})
    pyarrow.parquet.write_table(table, folder / "invented_clips.parquet")
    if meta:
        (folder / "invented_meta.csv.gz").write_bytes(gzip.compress(meta.encode()))
    return folder / "invented_clips.parquet"


def test_every_reader_says_what_it_reads_and_knows_no_foreign_columns() -> None:
    assert {reader.name for reader in readers()} == {"tidy table", "made-basket clips", "25 Hz excerpts"}
    for reader in readers():
        assert "columns" in reader.says
        assert not reader.recognises(("date", "temperature"))


def test_a_table_in_no_known_format_lists_the_formats(tmp_path: Path) -> None:
    (tmp_path / "weather.csv").write_text("date,temperature\nmonday,12\n")
    with pytest.raises(
        FilmError, match=r"its columns are date, temperature. The formats are: 25 Hz excerpts: .*tidy table"
    ):
        reader_of(tmp_path / "weather.csv")


def test_the_clips_of_one_possession_turned_round_are_the_same_possession(tmp_path: Path) -> None:
    path = clips(tmp_path)
    seven, eight = (read_film(path, ask=Ask(clip)) for clip in "78")
    assert seven.attackers == ("v1", "v2", "v3", "v4", "v5")
    assert eight.attackers == ("h1", "h2", "h3", "h4", "h5")
    assert seven.attackers_m == pytest.approx(eight.attackers_m)
    assert seven.defenders_m == pytest.approx(eight.defenders_m)
    # 28 ft from the baseline on the axis is 22.75 ft from under the basket: NBA Official Rules 2021-22, Rule 1
    assert seven.attackers_m[0, 0] == pytest.approx([0.0, 22.75 * 0.3048])
    assert seven.t_s == pytest.approx([0, 0.12, 0.24, 0.36])


def test_a_doubtful_clip_says_so(tmp_path: Path) -> None:
    assert read_film(clips(tmp_path), ask=Ask("8")).notes == (
        'The second table marks clip 8 "pbp_far" instead of "ok".',
    )


@pytest.mark.parametrize(
    ("clip", "meta", "says"),
    [
        (None, "", "this file holds many clips; name one with --clip"),
        ("7", "", "invented_meta.csv.gz, which is not there; name it with --meta"),
        ("9", "clip,offence,attack\n9,home,low_x\n", 'no clip is called "9"'),
        ("7", "clip,offence,attack\n8,home,low_x\n", 'invented_meta.csv.gz: clip "7" stands there 0 times'),
        ("7", "clip,offence,attack\n7,both,low_x\n", 'row 2, column offence: "both" is no side; write home or visitor'),
        ("7", "clip,offence,attack\n7,home,up\n", 'row 2, column attack: "up" is no basket; write low_x or high_x'),
    ],
)
def test_clips_that_are_not_explained_ask_for_it(tmp_path: Path, clip: str | None, meta: str, says: str) -> None:
    with pytest.raises(FilmError, match=says):
        read_film(clips(tmp_path, meta=meta), ask=Ask(clip))


def test_excerpts_are_read_with_the_height_of_the_ball(tmp_path: Path) -> None:
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(["excerpt", "t_ms", "period", "team", "entity", "x_ft", "y_ft", "z_ft"])
    home = [(66.0, 25.0), (75.0, 8.0), (75.0, 42.0), (88.0, 3.0), (88.0, 47.0)]
    for t_ms in (0, 40, 80):
        writer.writerow(["Z", t_ms, 1, "ball", "ball", 66.0, 26.0, 4.0])
        for i, (x, y) in enumerate(home):
            writer.writerow(["Z", t_ms, 1, "home", f"a{i}", x, y, 0.0])
            writer.writerow(["Z", t_ms, 1, "visitor", f"b{i}", x + 4, y, 0.0])
    (tmp_path / "invented.csv").write_text(out.getvalue())
    strip = read_film(tmp_path / "invented.csv")
    assert strip.rate_hz == pytest.approx(25)
    assert strip.offence.value == "home"
    assert strip.ball_m[0] == pytest.approx([-1 * 0.3048, 22.75 * 0.3048, 4 * 0.3048])


@pytest.mark.parametrize("ending", [".csv", ".csv.gz", ".parquet"])
def test_a_film_written_as_a_tidy_table_is_read_as_the_same_film(tmp_path: Path, ending: str) -> None:
    path, ask = clips(tmp_path), Ask("7")
    strip, rows = read_film(path, ask=ask), read_rows(path, ask)
    out = tmp_path / f"tidy{ending}"
    write_tidy(rows, header_of(strip, rows.stated), out)
    again = read_film(out)
    assert again.reader == "tidy table"
    assert np.array_equal(again.attackers_m, strip.attackers_m)
    assert np.array_equal(again.defenders_m, strip.defenders_m)
    assert np.array_equal(again.ball_m, strip.ball_m)
    assert np.array_equal(again.t_s, strip.t_s)


def test_a_tidy_table_is_written_only_as_what_can_be_read_again(tmp_path: Path) -> None:
    path = clips(tmp_path)
    with pytest.raises(FilmError, match=r"tidy.txt: the tidy table is written as .csv, .csv.gz, .parquet"):
        write_tidy(read_rows(path, Ask("7")), Stated(), tmp_path / "tidy.txt")


@pytest.mark.parametrize("mark", [";", "\t"])
def test_a_table_from_a_spreadsheet_with_decimal_commas_is_read(sample: Sample, mark: str) -> None:
    lines = [line.replace(",", mark) if i else line for i, line in enumerate(sample.lines())]
    text = "\n".join(line.replace(".", ",") if mark == ";" and i else line for i, line in enumerate(lines))
    plain = read_film(sample.csv("plain.csv"))
    assert np.array_equal(read_film(sample.write("\ufeff" + text + "\r\n\r\n")).attackers_m, plain.attackers_m)


def test_the_other_spelling_of_the_sides_is_read_too(sample: Sample) -> None:
    text = "\n".join(sample.lines()).replace("offence", "Offense").replace("defence", "Defense")
    assert read_film(sample.write(text)).attackers == ("1", "2", "3", "4", "5")
