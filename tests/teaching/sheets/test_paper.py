"""Every sheet is on the paper it says, black on white, with room for the clip, its fonts inside, always the same."""

from __future__ import annotations

from io import BytesIO
from typing import Any

import numpy as np
import pytest
from pypdf import PdfReader
from tests.teaching.books import shown
from tests.teaching.sheets.printed import SCALE, cards, handout, made, mark, pages, sizes_mm, some_of_every_kind, text

from backcut.errors import BackcutError
from backcut.teaching.sheets import PAPERS, Sheet, handout_pdf, paper_named

SOME = some_of_every_kind()
IDS = [name for name, _ in SOME]
#: ISO 216:2007 in mm; ANSI/ASME Y14.1 in inches.
A4, A3, A6 = (210.0, 297.0), (297.0, 420.0), (105.0, 148.0)
LETTER, TABLOID = (8.5 * 25.4, 11 * 25.4), (11 * 25.4, 17 * 25.4)
POINT_MM = 25.4 / 72


@pytest.mark.parametrize(
    ("pdf", "size"),
    [
        (handout("school-team", 2), A4),
        (handout("school-team", 2, "letter"), LETTER),
        (made("school-team", Sheet.POSTER)[0].pdf, A3),
        (made("school-team", Sheet.POSTER, "letter")[0].pdf, TABLOID),
        (cards("school-team", 4), A4),
        (cards("school-team", 4, "letter"), LETTER[::-1]),  # two half letters stand side by side
    ],
)
def test_the_page_is_the_paper_to_a_point(pdf: bytes, size: tuple[float, float]) -> None:
    for wide, high in sizes_mm(pdf):
        assert abs(wide - size[0]) < POINT_MM
        assert abs(high - size[1]) < POINT_MM


def test_four_cards_are_cut_from_an_a4_and_two_from_a_letter() -> None:
    """Half an A4 and half of that is an A6 (ISO 216); half a letter is 5.5 x 8.5 in."""
    across, down = PAPERS["a4"].cards
    assert (A4[0] / across, A4[1] / down) == pytest.approx(A6, abs=1.0)
    across, down = PAPERS["letter"].cards
    turned = PAPERS["letter"].turned
    assert (turned.width_mm / across, turned.height_mm / down) == pytest.approx((5.5 * 25.4, 8.5 * 25.4))
    assert [len(PdfReader(BytesIO(cards("school-team", n))).pages) for n in (1, 4, 5, 9)] == [1, 1, 2, 3]
    assert [len(PdfReader(BytesIO(cards("school-team", n, "letter"))).pages) for n in (1, 2, 3)] == [1, 1, 2]


@pytest.mark.parametrize("pdf", [pdf for _, pdf in SOME], ids=IDS)
def test_nothing_is_in_colour_and_nothing_stands_where_the_clip_holds(pdf: bytes) -> None:
    for page in pages(pdf):
        assert (page.max(axis=2) == page.min(axis=2)).all()  # as much red as green as blue
        assert (page[: int(15 * SCALE)] == 255).all()
        assert (page[int(15 * SCALE) :] < 64).any()


@pytest.mark.parametrize("pdf", [pdf for _, pdf in SOME], ids=IDS)
def test_hardly_anything_is_between_black_and_white(pdf: bytes) -> None:
    """The edges of letters and lines are smoothed by the renderer, a grey ground would be a plane of one grey."""
    for page in pages(pdf):
        grey = page[:, :, 0]
        inner = (grey > 40) & (grey < 250)
        flat = inner[1:-1, 1:-1] & (grey[1:-1, 1:-1] == grey[:-2, 1:-1]) & (grey[1:-1, 1:-1] == grey[2:, 1:-1])
        flat &= (grey[1:-1, 1:-1] == grey[1:-1, :-2]) & (grey[1:-1, 1:-1] == grey[1:-1, 2:])
        assert flat.sum() < 1e-4 * grey.size


@pytest.mark.parametrize("pdf", [pdf for _, pdf in SOME], ids=IDS)
def test_a_page_is_ink_light(pdf: bytes) -> None:
    for page in pages(pdf):
        assert (page < 128).mean() < 0.10


def _fonts(resources: Any) -> list[Any]:
    """All fonts of a page, those of the pictures in it too."""
    found = [font.get_object() for font in resources.get("/Font", {}).values()]
    for inner in resources.get("/XObject", {}).values():
        found += _fonts(inner.get_object().get("/Resources", {}))
    return found


@pytest.mark.parametrize("pdf", [pdf for _, pdf in SOME], ids=IDS)
def test_all_letters_are_literata_and_lie_in_the_file(pdf: bytes) -> None:
    for page in PdfReader(BytesIO(pdf)).pages:
        fonts = _fonts(page["/Resources"])
        assert fonts
        for font in fonts:
            assert "Literata" in font["/BaseFont"]
            kept = font["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
            assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(kept)


@pytest.mark.parametrize("pdf", [pdf for _, pdf in SOME], ids=IDS)
def test_it_is_drawn_and_no_photograph(pdf: bytes) -> None:
    for page in PdfReader(BytesIO(pdf)).pages:
        assert not page.images


def test_two_runs_print_the_same_bytes() -> None:
    again = handout_pdf(shown("school-team")[2], mark("school-team"), PAPERS["a4"])
    assert again == handout("school-team", 2)
    made.cache_clear()
    first = made("school-team", Sheet.POSTER)[0].pdf
    made.cache_clear()
    assert made("school-team", Sheet.POSTER)[0].pdf == first


@pytest.mark.parametrize(("name", "pdf"), SOME, ids=IDS)
def test_every_page_says_which_book_which_text_and_which_day(name: str, pdf: bytes) -> None:
    for number in range(len(PdfReader(BytesIO(pdf)).pages)):
        said = text(pdf, number)
        assert "25 November 2026" in said
        versions = {mark(book).version for book in ("school-team", "four-out-school-team", "two-bigs")}
        assert any(f"Text {version}" in said for version in versions)


def test_another_text_has_another_version() -> None:
    assert mark("school-team").version != mark("two-bigs").version
    assert len(mark("school-team").version) == 8


def test_cut_marks_stand_where_the_cards_meet() -> None:
    page = next(pages(cards("school-team", 4)))
    dark = page[:, :, 0] < 128
    across, down = int(105 * SCALE), int(148.5 * SCALE)
    assert dark[down - 3 : down + 4, across - 3 : across + 4].any()
    left, top = dark[down - 3 : down + 4, : int(9 * SCALE)], dark[: int(22 * SCALE), across - 3 : across + 4]
    assert left.any()
    assert top.any()
    assert not dark[:, : int(2 * SCALE)].any()  # no printer reaches the edge
    assert np.count_nonzero(dark)


@pytest.mark.parametrize("name", ["a5", "", "poster"])
def test_an_unknown_paper_is_said(name: str) -> None:
    with pytest.raises(BackcutError, match=r"there is no such paper here\. Take a4, letter, a3, tabloid"):
        paper_named(name)


def test_cards_are_not_cut_from_a_poster() -> None:
    with pytest.raises(BackcutError, match="cards are cut from a4, letter"):
        cards("school-team", 1, "a3")
