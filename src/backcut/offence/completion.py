"""How a sentence that has been begun can go on, made from the phrases and their choices alone."""

from __future__ import annotations

import difflib
import itertools
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from backcut.offence.book import plain_book
from backcut.offence.choices import CHOICES
from backcut.offence.formation import formations
from backcut.offence.phrase import Phrase, phrases
from backcut.offence.pieces import parts
from backcut.offence.sentences import MOST_LETTERS

#: More ways than this are no help: they are told as far as they have words in common (own design).
MOST = 8
_NEAREST = 3

_WORD = re.compile(r"[\w'-]+")
_BETWEEN = re.compile(r"[\s,.;]*")
CUE = re.compile(r"\s*([A-Za-z][\w' -]{0,30})\.(?:\s+|$)")


@dataclass(frozen=True, slots=True)
class Completion:
    """A way a sentence can go on.

    `insert` are the letters that are missing, `whole` the sentence so far with them, as a book writes it, its cue word
    kept. `phrase` and `choice` name what is being said; `phrase` is empty where several sentences go on in the same
    words. `who` says why one would choose it.
    """

    insert: str
    whole: str
    phrase: str
    choice: str | None
    who: str


@dataclass(frozen=True, slots=True)
class _Sentence:
    """A sentence that can be written, its words with where they end, and where its choices begin.

    `slots` are (start, end, choice, value) of the choices it says; `stops` where a choice begins, said or left out.
    """

    phrase: Phrase
    text: str
    words: tuple[str, ...]
    starts: tuple[int, ...]
    slots: tuple[tuple[int, int, str, str], ...]
    stops: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Way:
    """One sentence from the letter `at` up to the letter `to`."""

    sentence: _Sentence
    at: int
    to: int

    @property
    def text(self) -> str:
        """The sentence from its beginning up to `to`."""
        return self.sentence.text[: self.to]


@lru_cache(maxsize=2048)
def completions(text: str) -> tuple[Completion, ...]:
    """Every way the beginning of a sentence can go on, up to its end or its next choice; the best first, at most 8.

    The text may have a cue word, be in any case, and stop anywhere. Where nothing continues it, the nearest sentences
    are told whole, with nothing to insert; where it is a whole sentence already, there is nothing to tell.
    """
    text = text[:MOST_LETTERS]
    ways = _ways(text)
    if ways is not None:
        return _told(ways, text, "")
    match = CUE.match(text)
    if match:
        cue, text = f"{match[1][:1].upper()}{match[1][1:]}. ", text[match.end() :]
        ways = _ways(text)
        if ways is not None:
            return _told(ways, text, cue)
        return _nearest(text, cue)
    return _cues(text) or _nearest(text, "")


@cache
def _sentences() -> tuple[_Sentence, ...]:
    """Every sentence that can be written, those of the plain book first, in its order."""
    plain = [sentence.phrase.name for sentence in plain_book(formations()["five-out"]).sentences]
    order = sorted(phrases(), key=lambda name: plain.index(name) if name in plain else len(plain))
    return tuple(sentence for name in order for sentence in _written(phrases()[name]))


def _written(phrase: Phrase) -> Iterator[_Sentence]:
    may = {slot for slot in phrase.slots if f"[ {{{slot}}}]" in phrase.says}
    ways = [
        [*([None] if slot in may else []), *(value.name for value in CHOICES[slot].values)] for slot in phrase.slots
    ]
    for way in itertools.product(*ways):
        values = {slot: value for slot, value in zip(phrase.slots, way, strict=True) if value is not None}
        text, slots, stops = "", [], []
        *runs, last = parts(phrase, values)
        for words, choice in runs:
            if choice is not None:
                slots.append((len(text), len(text) + len(words), choice, values[choice]))
            text += words
            if choice is None:
                stops.append(len(text.rstrip()))
        text += last[0]
        found = list(_WORD.finditer(text))
        yield _Sentence(
            phrase,
            text,
            tuple(word[0].lower() for word in found),
            tuple(word.start() for word in found),
            tuple(slots),
            (*stops, len(text)),
        )


def _ways(text: str) -> list[_Way] | None:
    """Every way this beginning goes on; none where it is whole already, None where no sentence begins so."""
    typed = [word[0].lower() for word in _WORD.finditer(text)]
    if not _BETWEEN.fullmatch(_WORD.sub("", text)):
        return None
    tail = _tail(text)
    found: dict[str, _Way] = {}
    for sentence in _sentences():
        at = _reached(sentence, typed, whole_words=bool(tail))
        if at is None:
            continue
        if "." in tail and len(typed) == len(sentence.words):
            return []
        way = _Way(sentence, at, next((stop for stop in sentence.stops if stop > at), len(sentence.text)))
        found.setdefault(way.text, way)
    return list(found.values()) or None


def _reached(sentence: _Sentence, typed: Sequence[str], whole_words: bool) -> int | None:
    """How far into the sentence these words reach; None where it does not begin so."""
    if not typed:
        return 0
    last = len(typed) - 1
    if len(typed) > len(sentence.words) or tuple(typed[:last]) != sentence.words[:last]:
        return None
    word = sentence.words[last]
    if word != typed[last] and (whole_words or not word.startswith(typed[last])):
        return None
    return sentence.starts[last] + len(typed[last])


def _tail(text: str) -> str:
    """The spaces and stops behind the last word."""
    return text[len(text.rstrip(" \t\r\n\f\v,.;")) :] if _WORD.search(text) else ""


def _told(ways: list[_Way], text: str, cue: str) -> tuple[Completion, ...]:
    groups = _parted(ways) if len(ways) > MOST else [[way] for way in ways]
    told = [_group(group, _tail(text), cue) for group in groups]
    return (*told, *(() if cue else _cues(text)))[:MOST]


def _parted(ways: list[_Way]) -> list[list[_Way]]:
    """The ways in few groups that go on in the same words; those with the fewest ways on are parted first."""
    groups = _split(ways)
    while True:
        fits = [
            (len(split), i, split)
            for i, group in enumerate(groups)
            if len(group) > 1 and len(groups) - 1 + len(split := _split(group)) <= MOST
        ]
        if not fits:
            return groups
        _, i, split = min(fits, key=lambda fit: fit[:2])
        groups[i : i + 1] = split


def _split(group: list[_Way]) -> list[list[_Way]]:
    """A group of more than one way, parted by the first word in which they differ."""
    depth = _common(group)
    found: dict[str, list[_Way]] = {}
    for way in group:
        found.setdefault(" ".join(_words(way)[depth : depth + 1]), []).append(way)
    return list(found.values())


def _words(way: _Way) -> tuple[str, ...]:
    sentence = way.sentence
    return tuple(word for word, start in zip(sentence.words, sentence.starts, strict=True) if start < way.to)


def _common(group: list[_Way]) -> int:
    """How many words these ways have in common from the first on."""
    rows = zip(*map(_words, group), strict=False)
    return sum(1 for _ in itertools.takewhile(lambda row: len(set(row)) == 1, rows))


def _group(group: list[_Way], tail: str, cue: str) -> Completion:
    way = group[0]
    if len(group) == 1:
        return _completion(way, tail, cue)
    last = _common(group) - 1
    to = way.sentence.starts[last] + len(way.sentence.words[last])
    names = list(dict.fromkeys(way.sentence.phrase.cue for way in group))
    more = f" and {len(names) - 3} more" if len(names) > 3 else ""
    phrase = way.sentence.phrase.name if len(names) == 1 else ""
    told = _completion(replace(way, to=to), tail, cue)
    return replace(told, phrase=phrase, choice=None, who=f"{', '.join(names[:3])}{more}.")


def _completion(way: _Way, tail: str, cue: str) -> Completion:
    sentence = way.sentence
    choice, who = _chosen(sentence, way.at, way.to)
    insert = sentence.text[way.at : way.to]
    gap = _BETWEEN.match(insert)
    if gap and tail:
        insert = "".join(mark for mark in gap[0] if mark not in tail) + insert[gap.end() :]
    return Completion(insert, cue + way.text, sentence.phrase.name, choice, who)


def _chosen(sentence: _Sentence, at: int, to: int) -> tuple[str | None, str]:
    """The choice that is said between these letters, and who chooses so; else why the sentence is said."""
    for start, end, choice, value in sentence.slots:
        if start < to and at < end:
            return choice, CHOICES[choice].value(value).who
    return None, sentence.phrase.why


def _cues(text: str) -> tuple[Completion, ...]:
    """The sentences whose cue word begins so."""
    begun = " ".join(text.lower().split())
    found: dict[str, Completion] = {}
    for sentence in _sentences():
        cue = sentence.phrase.cue
        if begun and cue.lower().startswith(begun) and cue not in found:
            told = _completion(_Way(sentence, 0, sentence.stops[0]), "", f"{cue}. ")
            found[cue] = replace(told, insert=told.whole[len(begun) :])
    return tuple(found.values())[:MOST]


def _nearest(text: str, cue: str) -> tuple[Completion, ...]:
    """The sentences whose beginnings are most like this text, no two of one phrase."""
    by_phrase = _plain_sentences()
    plain = " ".join(text.lower().split())[: max(len(s.text) for some in by_phrase for s in some)]
    matcher = difflib.SequenceMatcher(b=plain, autojunk=False)

    def likeness(sentence: _Sentence) -> float:
        matcher.set_seq1(sentence.text[: len(plain)].lower())
        return matcher.ratio()

    near = sorted(by_phrase, key=lambda some: likeness(some[0]), reverse=True)[:_NEAREST]
    best = sorted((max(some, key=likeness) for some in near), key=likeness, reverse=True)
    return tuple(replace(_completion(_Way(s, 0, len(s.text)), "", cue), insert="") for s in best)


@cache
def _plain_sentences() -> tuple[tuple[_Sentence, ...], ...]:
    """Of each phrase its sentences that say nothing that may be left out."""
    found: dict[str, list[_Sentence]] = {}
    for sentence in _sentences():
        says = sentence.phrase.says
        if all(f"[ {{{choice}}}]" not in says for _, _, choice, _ in sentence.slots):
            found.setdefault(sentence.phrase.name, []).append(sentence)
    return tuple(map(tuple, found.values()))
