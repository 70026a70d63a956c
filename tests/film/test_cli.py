"""`backcut film` on the command line."""

import json

import pytest
import typer
from typer.testing import CliRunner

from backcut.cli.film import film_command
from backcut.errors import BackcutError
from backcut.film.reading import read_film

from .invented import Sample

app = typer.Typer()
app.command("film")(film_command)
RUN = CliRunner()


def run(*words: object) -> str:
    result = RUN.invoke(app, [str(word) for word in words], env={"COLUMNS": "120"}, catch_exceptions=False)
    assert result.exit_code == 0
    return result.output


def test_the_words_say_how_everything_is_known(sample: Sample) -> None:
    said = run(sample.csv())
    assert "3.0 s, 31 moments, 10 a second, fiba court, read as tidy table." in said
    assert "Units m (detected: attackers stand" in said
    assert "Attack right (detected: " in said
    assert "The y axis points up (assumed: " in said
    assert "The ball changes hands once" in said
    assert "right corner 100%" in said


def test_the_data_say_the_same_as_the_words(sample: Sample) -> None:
    data = json.loads(run(sample.csv(), "--json", "--units", "m", "--y-axis", "up"))
    assert data["units"] == {"value": "m", "how": "stated"}
    assert data["attack"]["how"] == "detected"
    assert data["holder_changes"] == 1
    assert data["attackers"][2]["on_spots"] == {"RC": 1.0}
    assert data["attackers"][2]["between_spots"] == 0.0


def test_page_and_tidy_table_are_written_where_told(sample: Sample) -> None:
    source, page, table = sample.csv(), sample.folder / "film.html", sample.folder / "again.parquet"
    said = run(source, "--html", page, "--tidy", table).replace("\n", "")
    assert said.count("Written: ") == 2
    assert "<html" in page.read_text(encoding="utf-8")
    assert read_film(table).attackers_m == pytest.approx(read_film(source).attackers_m)


def test_a_stretch_is_cut_out_by_the_clock_of_the_file(sample: Sample) -> None:
    data = json.loads(run(sample.csv(), "--json", "--from", "1.0", "--to", "2.0"))
    assert (data["start_s"], data["duration_s"], data["moments"]) == (1.0, 1.0, 11)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--units", "yards"), 'the command: units cannot be "yards"; write one of: m, ft, cm, auto'),
        (("--attack", "up"), 'the command: attack cannot be "up"; write one of: left, right, auto'),
        (("--rate", "fast"), 'the command: rate_hz cannot be "fast"; write frames per second from 1 to 1000'),
        (("--from", "9"), "nothing lies between 9 and 3 s; its clock runs from 0 to 3 s"),
        (("--tidy", "nowhere/at/all.csv"), "the file cannot be written"),
    ],
)
def test_a_wrong_word_on_the_command_line_is_one_clear_error(sample: Sample, words: tuple[str, ...], says: str) -> None:
    with pytest.raises(BackcutError, match=says):
        run(sample.csv(), *words)


def test_a_page_is_not_written_over_a_folder(sample: Sample) -> None:
    with pytest.raises(BackcutError, match="cannot be written"):
        run(sample.csv(), "--html", sample.folder)
