"""The findings of a proof as one file: small still courts with their sentences, each opens as a possession that plays.

The list stands alone: printed, or opened without script, it says everything. The possessions wait beside it as
templates; the script puts one in the place of the list when the address asks for it: FILE#2 is finding 2.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from backcut.court.record import Court
from backcut.engine.gym import gym
from backcut.page.document import fonts, footer, main, script, shape, static, told, whole
from backcut.page.finding import Asked, Heading, Item
from backcut.page.finding_list import counted, listed, opening_word
from backcut.page.still_svg import still_svg
from backcut.page.words import seconds, sentence_case
from backcut.picture.floor import Floor, floor
from backcut.picture.found import show_at, show_of_start
from backcut.picture.marks import defs
from backcut.picture.show import Show
from backcut.picture.still import About, Still, still

__all__ = ["Asked", "Heading", "Item", "Shown", "findings_page", "shown"]


@dataclass(frozen=True, slots=True)
class Shown:
    """A finding with its show: the place of the moment that shows it, and its still. `plays` unless nothing happens."""

    show: Show
    moment: int
    still: Still
    plays: bool


def findings_page(heading: Heading, items: Sequence[Item]) -> str:
    """The page of a proof as one HTML file that fetches nothing.

    Raises: CourtError or MotionError for a court or squad that is not known, or steps that cannot be timed.
    """
    court = gym(heading.book, heading.court_name, heading.squad_name).court
    seen = [shown(item, court_name=heading.court_name, squad_name=heading.squad_name) for item in items]
    reach_cm = max((one.still.reach_cm for one in seen if one), default=0.0)
    plays = [place for place, one in enumerate(seen, 1) if one and one.plays]
    pictures = [_picture(place, one, floor(court), reach_cm) for place, one in enumerate(seen, 1)]
    possessions = [
        _possession(place, item, one, plays, len(items))
        for place, (item, one) in enumerate(zip(items, seen, strict=True), 1)
        if one and one.plays
    ]
    style = f"{fonts()}{static('style.css').decode()}{static('findings.css').decode()}"
    parts = [_symbols(court), f'<div id="stage">{listed(heading, items, pictures)}</div>', *possessions]
    return whole(f"{heading.book.title}, {counted(len(items))}", "findings", style, script("findings.js"), parts)


def shown(item: Item, *, court_name: str | None = None, squad_name: str | None = None) -> Shown | None:
    """What there is to see of a finding, on the court and with the squad of these names, or the book's.

    Raises: CourtError or MotionError for a court or squad that is not known, or steps that cannot be timed.
    """
    names = {"court_name": court_name, "squad_name": squad_name}
    about = About(item.at, item.players, item.spot)
    if item.steps:
        show, place = show_at(item.book, item.steps, item.at, sentence_case(item.here or item.title), **names)
        return Shown(show, place, still(show, show.moments[place], item.steps, about), True)
    if item.start is None:
        return None
    show = show_of_start(item.book, item.start, **names)
    return Shown(show, 0, still(show, show.moments[0], (), about), False)


def _symbols(court: Court) -> str:
    """The marks and the court, defined once for every still and every possession."""
    marks = defs().removesuffix("</defs>")
    return f'<svg class="unseen" aria-hidden="true">{marks}<g id="ground">{floor(court).svg}</g></defs></svg>'


def _picture(place: int, one: Shown | None, drawn: Floor, reach_cm: float) -> str:
    if one is None:
        return '<div class="picture blank"><p>It never happens, so there is no picture.</p></div>'
    link = (
        f'<a class="button full needs-script" href="#{place}">Show me<span class="unseen"> finding {place}</span></a>'
        if one.plays
        else ""
    )
    return f'<div class="picture">{still_svg(one.still, drawn.room, reach_cm)}{link}</div>'


def _possession(place: int, item: Item, one: Shown, plays: Sequence[int], among: int) -> str:
    said = f"{opening_word(item.property)}, {item.count}"
    show = replace(one.show, title=item.title, subtitle=f"{sentence_case(said)} {sentence_case(item.book.title)}")
    drawn = floor(show.court, show.denial_word)
    when = seconds(show.moments[one.moment].t_s)
    about = f'<p class="shows"><a href="#floor" data-go="{one.moment}">It shows at {when}</a></p>'
    data = "".join(f' data-{name}="{value}"' for name, value in shape(show, drawn).items())
    before = [other for other in plays if other < place][-1:]
    after = [other for other in plays if other > place][:1]
    links = [f'<a href="#finding-{place}">{"The finding" if among == 1 else f"All {among} findings"}</a>']
    links += [f'<a href="#{other}" aria-label="Before: finding {other}">Before</a>' for other in before]
    links += [f'<a href="#{other}" aria-label="Next: finding {other}">Next</a>' for other in after]
    return (
        f'<template id="possession-{place}"{data}><nav class="ways-on" aria-label="Findings">{links[0]}'
        f"<span>Finding {place} of {among}</span>{''.join(links[1:])}</nav>"
        f"{main(show, drawn, about=about)}{footer(show)}{told(show, drawn)}</template>"
    )
