"""Everything a book gives, file by file, and the page that lists it: what `handouts` writes."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from dataclasses import dataclass
from html import escape
from multiprocessing import get_context

from backcut.language import direction, language, measuring, noted, say, speaking, units
from backcut.motion.squads import SQUADS
from backcut.offence.action import letter
from backcut.offence.book import Book
from backcut.offence.edit import text_of
from backcut.offence.reading import book_from_text
from backcut.page.plain import tokens
from backcut.teaching.clips.clip import clip
from backcut.teaching.clips.told import told_example
from backcut.teaching.drills.drill import Drill, Hall, ShortError, drills
from backcut.teaching.drills.stages import Stage
from backcut.teaching.examples import Example, example, examples
from backcut.teaching.quizzes import QuizError, quiz, quiz_page
from backcut.teaching.sheets.card import cards_pdf
from backcut.teaching.sheets.drilled import card_of, plan_of
from backcut.teaching.sheets.paper import Paper, Stamp
from backcut.teaching.sheets.plan import page_pdf
from backcut.teaching.sheets.sheets import Sheet, file_name, sheets
from backcut.teaching.tonight.plan import evening

#: Questions on the quiz page (own design: some four minutes).
QUESTIONS = 10
#: Clips that are made at once (own choice: as many as the smallest laptop has cores).
AT_ONCE = 2
INDEX = "index.html"
POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' file:"


@dataclass(frozen=True, slots=True)
class File:
    """A file of the pack: its name, what is in it, what it is, the heading it is listed under, and its words."""

    name: str
    data: bytes
    about: str
    heading: str
    words: str = ""


def pack(book: Book, stamp: Stamp, paper: Paper, hall: Hall, minutes: int, *, with_clips: bool) -> Iterator[File]:
    """Every file, as it is ready; the page that lists them comes last.

    What cannot be made is left out: a sentence that never speaks, a drill for which too little is there.
    """
    shown = examples(book)
    made: list[File] = []
    context = get_context("spawn")  # a fork would take the threads of the coder and of the arrays along
    with ProcessPoolExecutor(AT_ONCE, mp_context=context) as pool:
        ranks = list(shown) if with_clips else []
        waiting = [(rank, pool.submit(_clip, text_of(book), rank, language(), units())) for rank in ranks]
        try:
            for file in _on_paper(book, stamp, paper, hall, minutes, shown):
                made.append(file)
                yield file
            for rank, clip_ in waiting:
                for file in _clip_files(book, rank, clip_):
                    made.append(file)
                    yield file
        finally:
            pool.shutdown(cancel_futures=True)
    yield File(INDEX, _index(stamp, made).encode(), say("The list of all of it"), "")


def count(book: Book, *, with_clips: bool) -> int:
    """About how many files a pack has: for whoever shows how far it has come."""
    sentences = len(book.sentences)
    return sentences * (1 + 3 * with_clips) + len(Sheet) + 5


def _on_paper(
    book: Book, stamp: Stamp, paper: Paper, hall: Hall, minutes: int, shown: dict[int, Example]
) -> Iterator[File]:
    tonight = evening(book, hall, minutes)
    title = file_name(stamp.title)
    page = page_pdf(plan_of(tonight), stamp, paper)
    yield File(f"{title}-tonight-{paper.name}.pdf", page, say("Tonight's page"), say("Tonight"))
    if tonight.cards:
        cards = cards_pdf([card_of(one) for one in tonight.cards], stamp, paper)
        yield File(f"{title}-tonight-cards-{paper.name}.pdf", cards, say("Its cards"), say("Tonight"))
    for kind in (Sheet.POSTER, Sheet.BENCH, Sheet.BOOKLET, Sheet.QUIZ, Sheet.HANDOUT):
        for one in sheets(book, kind, stamp, paper):
            about = say(_ABOUT[kind]) if one.rank is None else f"{letter(one.rank)} {book.cue(one.rank)}"
            yield File(one.name, one.pdf, about, say("On paper") if one.rank is None else say("One sentence on a page"))
    for one in sheets(book, Sheet.BENCH, stamp, paper, large=True):
        yield File(one.name, one.pdf, say("The bench sheet in large print"), say("On paper"))
    if all_cards := _drills(shown, hall):
        data = cards_pdf([card_of(one) for one in all_cards], stamp, paper)
        yield File(f"{title}-cards-{paper.name}.pdf", data, say("A drill card for every sentence"), say("On paper"))
    try:
        questions = quiz_page(book, quiz(book, QUESTIONS, 1))
        yield File(f"{title}-quiz.html", questions.encode(), say("Questions for the phone"), say("For the phone"))
    except QuizError:
        pass  # a book of one sentence has nothing to ask


def _drills(shown: dict[int, Example], hall: Hall) -> list[Drill]:
    made: list[Drill] = []
    for one in shown.values():
        try:
            made += drills(one, hall, stages=[Stage.GUIDED])
        except ShortError:
            continue
    return made


def _clip(text: str, rank: int, spoken: str, measured: str) -> tuple[bytes, bytes, str]:
    """A clip made in a process of its own: the MP4, its poster and its words."""
    book, _ = book_from_text(text, SQUADS)
    with speaking(spoken), measuring(measured):
        made = clip(told_example(example(book, rank)))
    return made.mp4, made.poster, made.words


def _clip_files(book: Book, rank: int, waiting: Future[tuple[bytes, bytes, str]]) -> Iterator[File]:
    mp4, poster, words = waiting.result()
    name, about = f"{str(letter(rank)).lower()}-{file_name(book.cue(rank))}", f"{letter(rank)} {book.cue(rank)}"
    heading = say("For the phone")
    yield File(f"{name}.mp4", mp4, say("{sentence}, clip", sentence=about), heading, words)
    yield File(f"{name}.png", poster, say("{sentence}, picture", sentence=about), heading, words)
    yield File(f"{name}.txt", f"{words}\n".encode(), say("{sentence}, in words", sentence=about), heading)


_ABOUT = {
    Sheet.POSTER: noted("The book for the wall"),
    Sheet.BENCH: noted("The bench sheet"),
    Sheet.BOOKLET: noted("The book to hand over"),
    Sheet.QUIZ: noted("A quiz on paper, with its key"),
    Sheet.HANDOUT: "",
}


def _index(stamp: Stamp, made: list[File]) -> str:
    """A page that lists every file under its heading, with the pictures; it fetches nothing from elsewhere."""
    known = tokens("day")
    style = (
        f"body{{font:1rem/1.5 Literata,Georgia,serif;color:{known['ink']};background:{known['page']};margin:2rem auto;"
        "max-width:44rem;padding:0 1rem}h1{font-weight:500}ul{list-style:none;padding:0}li{padding:.2rem 0}"
        f"a{{color:inherit;display:inline-block;min-height:2.75rem;line-height:2.75rem}}small{{color:{known['soft']}}}"
        "img{width:9rem;height:auto;display:block}"
    )
    parts = []
    for heading in dict.fromkeys(file.heading for file in made):
        rows = "".join(_row(file) for file in made if file.heading == heading)
        parts.append(f"<h2>{escape(heading)}</h2><ul>{rows}</ul>")
    return (
        f'<!doctype html><html lang="{language()}" dir="{direction()}"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'
        f"<title>{escape(stamp.title)}</title><style>{style}</style></head><body><main>"
        f"<h1>{escape(stamp.title)}</h1><p>{escape(stamp.words)}</p>{''.join(parts)}</main></body></html>\n"
    )


def _row(file: File) -> str:
    picture = f'<img src="{escape(file.name)}" alt="{escape(file.words)}">' if file.name.endswith(".png") else ""
    size = say("{size} kB", size=max(1, len(file.data) // 1000))
    return f'<li><a href="{escape(file.name)}">{picture}{escape(file.about)}</a> <small>{escape(size)}</small></li>'
