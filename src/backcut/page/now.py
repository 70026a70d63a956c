"""Everybody, now, and the caption: the picture in words, so that the floor is never the only source."""

from __future__ import annotations

from html import escape

from backcut.motion.timeline import pose
from backcut.offence.action import Kind
from backcut.page.words import seconds, section, sentence_case, stop_word, tab, who, with_bold
from backcut.picture.show import Answer, Moment, Show, Stance

#: What a defender's stance adds to the picture in words; the plain ones add nothing.
SAID = {
    Stance.DENIES: "denies {}",
    Stance.SAGS: "sags off {}",
    Stance.JUMPED: "has jumped to the ball",
    Stance.HELPS: "helps off {}",
}


def caption(moment: Moment) -> str:
    """The caption under the floor, time first, the lit answers bold."""
    bold = [f"{answer.player} {answer.text}" for answer in moment.answers if answer.lit]
    return f'<span class="t">{seconds(moment.t_s)}</span><span>{with_bold(moment.caption, bold)}</span>'


def everybody(show: Show, moment: Moment) -> str:
    """One line a player: number, letter, what he does; and the defenders who do something that matters."""
    answers = {answer.player: answer for answer in moment.answers}
    holder = pose(show.timeline, moment.t_s).holder
    lines = [_line(number, answers.get(number), holder, bool(show.sentences)) for number in show.timeline.players]
    guards = [
        f"<li>{_plate(number)}<span>{SAID[stance].format(number)}</span></li>"
        for number, stance in sorted(moment.guards.items())
        if stance in SAID
    ]
    return "".join(lines) + "".join(guards)


def _plate(number: int) -> str:
    return f'<span class="guard">X{number}</span>'


def _line(number: int, answer: Answer | None, holder: int | None, lettered: bool) -> str:
    sign = ""
    if number == holder:
        sign = '<i class="has"></i>'
    elif answer is not None and answer.letter is not None:
        sign = tab(answer.letter, "on" if answer.lit else "")
    text = answer.text if answer is not None else ("has the ball" if number == holder else "")
    if number == holder and "ball" not in text and lettered and not (answer and answer.lit):
        text = f"has the ball, {text}" if text else "has the ball"
    said = f"<b>{escape(text)}</b>" if answer is not None and answer.lit else f"<span>{escape(text)}</span>"
    return f"<li>{who(number)}{sign}{said}</li>"


def now(show: Show) -> str:
    """The column beside the floor, as it stands at the first moment."""
    return (
        '<aside class="now" aria-labelledby="nh"><h2 id="nh">Everybody, now</h2>'
        f'<ul class="all" id="now">{everybody(show, show.moments[0])}</ul></aside>'
    )


def decisions(show: Show) -> str:
    """Every decision in words, in order: the whole possession for whoever prints it or opens it without script."""
    rows = "".join(
        f'<li><a href="#floor" data-go="{i}"><span class="t">{seconds(m.t_s)}</span>{_letters(m)}'
        f"<span>{_told(m)}</span></a></li>"
        for i, m in enumerate(show.moments)
    )
    word = stop_word(bool(show.sentences))
    return section("decisions", "decided", f"{word.capitalize()} by {word}", f"<ol>{rows}</ol>")


def _told(moment: Moment) -> str:
    """The event before the caption, unless the caption begins with it."""
    event = moment.event
    if not event or moment.caption.startswith(event):
        return escape(moment.caption)
    return f"<b>{escape(sentence_case(event))}</b> {escape(moment.caption)}"


def _letters(moment: Moment) -> str:
    letters = dict.fromkeys(answer.letter for answer in moment.answers if answer.lit and answer.letter)
    return f'<span class="tabs">{"".join(map(tab, letters))}</span>'


def sign(moment: Moment) -> str:
    """What a moment is known by on the time line: its first lit letter, "?" for a hole, a dot where no sentence won."""
    letters = (answer.letter for answer in moment.answers if answer.lit and answer.letter is not None)
    return next(letters, "?" if any(answer.kind == Kind.NO_ANSWER for answer in moment.answers) else "·")
