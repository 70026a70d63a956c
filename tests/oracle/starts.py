"""The rings and starts the counts are taken from (common practice, no source)."""

from __future__ import annotations

from .floor import Where, line_up

FIVE = ("LC", "LW", "T", "RW", "RC")
SIX = ("LC", "LW", "LS", "RS", "RW", "RC")
FOUR = ("LW", "LS", "RS", "RW")
THREE = ("LW", "T", "RW")

#: Formation -> ring, who starts where, who has the ball.
STARTS: dict[str, tuple[tuple[str, ...], Where, int]] = {
    "five-out": (FIVE, line_up(*FIVE), 3),
    "four-out": (SIX, line_up(*FOUR), 2),
    "three-out": (FIVE, line_up(*THREE), 2),
    "four on four spots": (FOUR, line_up(*FOUR), 2),
    "three on three spots": (THREE, line_up(*THREE), 2),
}
