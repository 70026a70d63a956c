"""Nothing that is taught is hard-wired in English, and the catalogue holds every message."""

from __future__ import annotations

from dataclasses import fields
from io import BytesIO
from pathlib import Path

import pytest
from babel.messages.pofile import read_po
from scripts.make_catalogue import SHIPPED, catalogue
from tests.pseudo import PSEUDO, hard_wired
from tests.teaching.books import BOOKS, book, shown

from backcut.language import speaking
from backcut.teaching.drills.card import words
from backcut.teaching.drills.drill import Hall, drills
from backcut.teaching.tonight.plan import evening


def own(name: str) -> list[str]:
    """What the coach wrote, and what he types: it stays as it is."""
    one = book(name)
    said = [(s.text, s.why, s.mistake, s.phrase.mistake, s.phrase.why) for s in one.sentences]
    cues = [one.cue(rank) for rank in range(len(one.sentences))]
    return [one.title, "--baskets", *cues, *(text for texts in said for text in texts if text)]


@pytest.mark.parametrize("name", BOOKS)
def test_a_drill_is_all_from_the_catalogue(name: str) -> None:
    with speaking("xx", PSEUDO):
        for one in shown(name).values():
            for made in drills(one, Hall(10, 2, 4)):
                card = words(made)
                for field in fields(card):
                    value = getattr(card, field.name)
                    for text in (value,) if isinstance(value, str) else value:
                        assert hard_wired(text, *own(name)) == [], field.name


@pytest.mark.parametrize("name", BOOKS)
@pytest.mark.parametrize("hall", [Hall(9, 1, 4), Hall(30, 1, 2), Hall(2, 0, 1)])
def test_tonight_is_all_from_the_catalogue(name: str, hall: Hall) -> None:
    with speaking("xx", PSEUDO):
        made = evening(book(name), hall, 90)
    texts = [made.title, made.about, made.bring, made.care, *made.not_met]
    texts += [text for one in made.questions for text in (one.asks, one.answer)]
    for one in made.activities:
        chains = [text for text in one.what if ">" in text]  # move lists are notation, the same in every language
        texts += [one.title, one.groups, one.say, *(text for text in one.what if text not in chains)]
    for text in texts:
        assert hard_wired(text, *own(name)) == [], text


def test_the_catalogue_holds_every_message_and_is_as_the_program_says_it() -> None:
    """Read by Babel, the reference library for gettext catalogues."""
    assert SHIPPED.read_bytes() == catalogue(), "run scripts/make_catalogue.py"
    read = read_po(BytesIO(SHIPPED.read_bytes()))
    assert len(read) > 150
    assert "fills the {target}" in read
    assert "left wing" in read


def test_a_translation_is_found_where_it_lies(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from babel.messages.catalog import Catalog
    from babel.messages.mofile import write_mo

    made = Catalog(locale="de")
    made.add("fills the {target}", "geht auf {target}")
    place = tmp_path / "de" / "LC_MESSAGES"
    place.mkdir(parents=True)
    with (place / "backcut.mo").open("wb") as file:
        write_mo(file, made)
    monkeypatch.setattr("backcut.language.LOCALE", tmp_path)
    with speaking("de"):
        made_card = words(drills(shown("first-month")[2], Hall(8, 1, 4))[0])
    assert "geht auf top" in made_card.true
