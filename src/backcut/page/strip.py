"""The time line: one row for the ball, one for what the book said, one slider over both, and the controls."""

from __future__ import annotations

from itertools import pairwise

from backcut.motion.timeline import Held
from backcut.page.now import sign
from backcut.page.words import seconds, stop_word, tab, who
from backcut.picture.show import Show

#: Own design, no source: room of one tab in rem, and the least and most rem a second takes.
TAB_REM = 1.9
LEAST_REM, MOST_REM = 2.6, 9.0

ICONS = {
    "before": "M3 2h2.5v14H3zM16 2v14L6.5 9z",
    "next": "M15 2h-2.5v14H15zM2 2v14l9.5-7z",
    "play": "M4 2l12 7-12 7z",
    "stop": "M4 2h3.6v14H4zM10.4 2H14v14h-3.6z",
}
SPEEDS = ("Still", "Step", "Slow", "Game")


def rem_a_second(show: Show) -> float:
    """How much room a second needs so that neighbouring tabs do not overlap, within limits."""
    gaps = [b.t_s - a.t_s for a, b in pairwise(show.moments) if b.t_s - a.t_s > 0.05]
    return min(max(TAB_REM / min(gaps, default=1.0), LEAST_REM), MOST_REM)


def _icon(name: str) -> str:
    return f'<svg viewBox="0 0 18 18" aria-hidden="true"><path d="{ICONS[name]}"/></svg>'


def _button(name: str, label: str) -> str:
    return f'<button type="button" id="{name}" aria-label="{label}">{_icon(name)}</button>'


def strip(show: Show) -> str:
    """The time line and its controls; shown only where the script runs."""
    said = '<em class="row said-row">said</em>' if show.sentences else ""
    return (
        f'<div class="time needs-script"><div class="score" id="score"><em class="row">ball</em>{said}'
        f"{_slider(show)}</div>{_deck(stop_word(bool(show.sentences)))}</div>"
    )


def _slider(show: Show) -> str:
    line, end, first = show.timeline, show.timeline.duration_s, show.moments[0].t_s
    bars = _bars("held", [(h.start_s, h.end_s) for h in line.held])
    bars += _bars("air", [(f.start_s, f.end_s) for f in line.flights])
    discs = "".join(f'<b class="at" data-t="{h.start_s:.2f}">{who(h.player)}</b>' for h in _catches(line.held))
    ticks = "".join(f'<span class="sec" data-t="{s}">{s}{_unit(s, end)}</span>' for s in range(int(end) + 1))
    tabs = "".join(f'<b class="at said" data-t="{m.t_s:.2f}">{tab(sign(m), "bare")}</b>' for m in show.moments)
    return (
        '<div class="window" id="slider" role="slider" tabindex="0" aria-label="Time" aria-valuemin="0"'
        f' aria-valuemax="{end:.1f}" aria-valuenow="{first:.1f}" aria-valuetext="{seconds(first)}">'
        f'<div class="reel" id="reel" data-rem="{rem_a_second(show):.2f}" data-end="{end:.2f}">'
        f'<div class="yet">{bars}</div><div class="past" id="past">{bars}</div><i class="axis"></i>{ticks}'
        f'<i class="pen" id="pen"></i>{discs}{tabs}<i class="playhead" id="playhead"></i></div>'
        '<span class="who pin" id="pin" hidden></span></div>'
    )


def _deck(word: str) -> str:
    speeds = "".join(
        f'<label><input type="radio" name="speed" value="{name.lower()}"{" checked" if name == SPEEDS[0] else ""}>'
        f"<span>{name}</span></label>"
        for name in SPEEDS
    )
    play = f'{_icon("play")}{_icon("stop")}<span class="word" id="play-word">Play</span>'
    return (
        f'<div class="deck">{_button("before", f"{word.capitalize()} before")}'
        f'<button type="button" id="play" class="full" aria-label="Play">{play}</button>'
        f'{_button("next", f"Next {word}")}<p class="count" id="count"></p>'
        f'<fieldset class="speed"><legend class="unseen">Speed</legend>{speeds}</fieldset></div>'
    )


def _bars(style: str, spans: list[tuple[float, float]]) -> str:
    return "".join(f'<i class="{style}" data-t="{a:.2f}" data-d="{b - a:.2f}"></i>' for a, b in spans)


def _catches(held: tuple[Held, ...]) -> list[Held]:
    """Where the ball changes hands: stretches of the same holder are one."""
    return [h for i, h in enumerate(held) if i == 0 or held[i - 1].player != h.player]


def _unit(second: int, end_s: float) -> str:
    return "\u00a0s" if second == int(end_s) else ""
