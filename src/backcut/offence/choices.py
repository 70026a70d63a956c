"""The choices on which coaches differ: each with its values, a named default, and who does it and why.

Where no source stands beside a value it is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Value:
    """One way to choose. `words` is how it reads inside a sentence; `who` says who does it and why."""

    name: str
    words: str
    who: str


@dataclass(frozen=True, slots=True)
class Choice:
    """A question with its values; the first value is the default."""

    name: str
    asks: str
    values: tuple[Value, ...]

    @property
    def default(self) -> str:
        """The name of the value that holds when the book is silent."""
        return self.values[0].name

    def value(self, name: str) -> Value:
        """The value with this name. Raises: KeyError if there is none."""
        for value in self.values:
            if value.name == name:
                return value
        raise KeyError(name)


def _choice(name: str, asks: str, *values: tuple[str, str, str]) -> Choice:
    return Choice(name, asks, tuple(Value(*value) for value in values))


CHOICES: Mapping[str, Choice] = {
    choice.name: choice
    for choice in (
        _choice(
            "exit",
            "Where does a cutter come out?",
            (
                "first open",
                "the first open spot",
                "Most school teams: a hole beside the ball is filled first, so the next pass is always there.",
            ),
            (
                "end of the line",
                "the end of the line",
                "Coaches who want one picture for the cutter: everybody behind moves up, the cutter goes last.",
            ),
            (
                "opposite corner",
                "the corner opposite the ball",
                "Many youth coaches, because it is one line; it is silent when the ball is in the middle.",
            ),
            (
                "fewest",
                "the side with the fewest of us",
                "Coaches who teach balance: look over the inside shoulder and go where nobody is.",
            ),
            (
                "opposite own",
                "the corner opposite where I came from",
                "Coaches who want the cut to go through; the corner is often taken.",
            ),
            (
                "filler's spot",
                "the spot the filler left",
                "Youth coaches: one player moves up, the cutter takes the spot that player left; it is silent when "
                "nobody could fill, as after a pass out of the corner.",
            ),
        ),
        _choice(
            "who fills",
            "Who moves up when a spot is empty?",
            ("chain", "wherever I stand", "Most: everybody behind the cutter moves up, so no hole stays."),
            (
                "nearest only",
                "right beside the ball",
                "Young teams: one player moves, the cutter takes what that player left.",
            ),
        ),
        _choice(
            "when to fill",
            "When does the filler go?",
            (
                "looked",
                "once the catcher has looked",
                "School teams: the lane stays open until the catcher has looked at the cutter.",
            ),
            ("at once", "at once", "Young players: moving is learnt first, waiting later."),
            ("count of two", "after a count of two", "Teams that want the double gap to drive into before it closes."),
        ),
        _choice(
            "fill path",
            "Which way does the filler run?",
            ("along the arc", "along the arc", "Most: short, and the filler sees ball and player."),
            ("through the elbow", "through the elbow", "Coaches who want the filler to lead toward the ball first."),
            (
                "through the lane",
                "through the lane",
                "Federation teaching: toward the key, then out (world coaches' manual, level 1).",
            ),
        ),
        _choice(
            "corner passer",
            "What does the player do who passes out of the corner?",
            ("come back", "cut and come back", "Most: a short cut, then back; nobody stands behind to take the spot."),
            ("hold", "hold", "Teams that keep the corner wide: the one exception to pass and cut."),
            ("cut through", "cut through", "Teams with an empty far spot; where there is none, the cutter comes back."),
        ),
        _choice(
            "skip passer",
            "What does the player do who threw a skip pass?",
            ("hold", "hold for a count", "Most: the far side is already moving; one more cutter would be late."),
            ("cut", "cut to the rim", "Teams that want every pass answered in the same way."),
        ),
        _choice(
            "front or rear",
            "On which side of the defender does the cut go?",
            (
                "read",
                "in front, or behind a defender who jumped to the ball",
                "Most: in front when unsure; behind when the passer's own defender jumped to the ball.",
            ),
            ("front", "in front of my defender", "Young players: one cut, always the same."),
            ("rear", "behind my defender", "Teams that meet defenders who always jump to the ball."),
        ),
        _choice(
            "cut taken away",
            "What if a defender stands in the cut?",
            ("go behind", "go behind", "Most: plant, go behind the defender, still to the rim."),
            ("screen away", "screen away", "Teams that screen: the next player away from the ball comes off it."),
            ("replace", "take my spot back", "Young players: back to the spot, and nobody is lost."),
        ),
        _choice(
            "denied corner",
            "What does a player do who is denied in the corner?",
            ("back cut", "back cut on the baseline side", "Most: the defender's back is to the baseline."),
            ("hold", "hold", "Teams that drive from the wing: a denied corner is help taken away."),
            ("go through", "go through", "Teams with an empty far spot; where there is none, the cutter comes back."),
        ),
        _choice(
            "denied filler",
            "What if a filler is denied on the way?",
            ("back cut", "back cut", "Most: the same answer as for everybody who is denied."),
            ("hold", "hold", "Coaches who let the ball dribble over when the fill is shut."),
            ("come to the ball", "come to the ball", "Teams under pressure: one step to the passer, two hands."),
        ),
        _choice(
            "denial",
            "When is a player denied?",
            ("foot", "a foot past the mark", "Most: the arc can be seen; a defender's foot outside it is a denial."),
            ("hand", "a hand in the passing lane", "Coaches who teach the lane, not the line."),
            (
                "either",
                "a foot past the mark or a hand in the passing lane",
                "Teams whose passes are often stolen.",
            ),
        ),
        _choice(
            "hold count",
            "How long does the catcher hold the ball?",
            ("one", "hold for a count of one", "Most: catch, face, look; one count."),
            ("none", "play on at once", "Quick teams against a sagging defence."),
            ("two", "hold for a count of two", "Teams that rush: two counts, said aloud."),
        ),
        _choice(
            "signal",
            "Who starts a back cut?",
            ("none", "at once", "Most: the denial itself is the signal."),
            ("fist", "after showing a fist", "Teams whose passers throw too early: the fist says it is coming."),
            ("eyes", "when the passer looks at me", "Older teams: the passer's eyes start the cut."),
        ),
        _choice(
            "occupied block",
            "How is the cut run when the block on the ball side is taken?",
            ("other side", "cut to the other side of the rim", "Most with one inside player: the rim stays free."),
            ("shallow", "cut shallow", "Teams with a scorer on the block: leave the lane to that player."),
            ("screen", "screen for the player on the block", "Teams with two inside players."),
        ),
        _choice(
            "dribble at",
            "What does a player do when the ball is dribbled at the player's spot?",
            ("back cut", "back cut", "Most: the dribble is a call to go."),
            ("hand-off", "take a hand-off", "Teams against a sagging defence: come behind the ball."),
            ("slide on", "slide on", "Young players: make room by one spot."),
        ),
        _choice(
            "inside",
            "Where does the inside player go?",
            ("opposite", "go opposite the ball", "Teams that drive and cut: the lane stays empty."),
            ("follow", "follow the ball", "A scorer with the back to the basket."),
            ("stay", "stay where I am", "Young teams: one thing less to think of."),
            ("high", "stay high", "A passer, and an outlet against denial."),
        ),
        _choice(
            "two inside",
            "How do two inside players stand to each other?",
            ("opposite levels", "opposite levels", "Most: one low on the ball side, one high on the other."),
            ("opposite sides", "opposite sides", "Two who play with the back to the basket: a block each."),
        ),
    )
}
