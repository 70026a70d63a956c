"""Every word of ours on paper, page and clip comes from one catalogue, so that a club can have it in its language.

The sentences of a book are the coach's own and stay as they are written. `scripts/make_catalogue.py` gathers what is
said into `locale/backcut.pot`; a translation lies beside it as `<language>/LC_MESSAGES/backcut.mo`.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations, translation
from pathlib import Path

from backcut.errors import BackcutError

LOCALE = Path(__file__).parent / "locale"
#: Languages that are written from the right to the left (ISO 639: Arabic, Persian, Hebrew, Urdu).
FROM_THE_RIGHT = frozenset({"ar", "fa", "he", "ur"})

UNITS = ("m", "ft")
INCH_M = 0.0254  # international inch, exact by definition (1959 agreement)

_ENGLISH = NullTranslations()
_units: ContextVar[str] = ContextVar("units", default="m")
_spoken: ContextVar[tuple[str, NullTranslations]] = ContextVar("spoken", default=("en", _ENGLISH))


def noted(message: str) -> str:
    """The message itself, for the catalogue: it is said later."""
    return message


def say(message: str, **values: object) -> str:
    """The message in the language spoken now, with its `{values}` put in."""
    said = _spoken.get()[1].gettext(message)
    return said.format(**values) if values else said


def say_many(one: str, many: str, n: int, **values: object) -> str:
    """The message for so many: its `{n}` is the number."""
    return _spoken.get()[1].ngettext(one, many, n).format(n=n, **values)


def language() -> str:
    """The language spoken now, as its ISO 639 code."""
    return _spoken.get()[0]


def units() -> str:
    """The units lengths are said in now: "m" or "ft"."""
    return _units.get()


def direction() -> str:
    """Which way the language spoken now is written: "ltr" or "rtl"."""
    return "rtl" if language().partition("_")[0] in FROM_THE_RIGHT else "ltr"


def far(length_m: float, *, exact: bool = False) -> str:
    """A length in the units spoken now: "1.8 m", or to half a foot "6 ft"; an `exact` one "6.75 m" or "22 ft 2 in"."""
    if _units.get() == "m":
        digits = 1 if not exact else 2 if round(length_m * 1000) % 10 == 0 else 3
        return say("{length} m", length=f"{length_m:.{digits}f}")
    if exact:
        feet, inches = divmod(round(length_m / INCH_M), 12)
        return say("{feet} ft {inches} in", feet=feet, inches=inches)
    return say("{length} ft", length=f"{max(round(2 * length_m / (12 * INCH_M)), 1) / 2:g}")


@contextmanager
def measuring(units: str) -> Iterator[None]:
    """Say lengths in these units meanwhile, "m" or "ft". Raises: BackcutError for others."""
    if units not in UNITS:
        raise BackcutError(f'--units "{units}": there are {" and ".join(UNITS)}.')
    token = _units.set(units)
    try:
        yield
    finally:
        _units.reset(token)


@contextmanager
def speaking(code: str, catalogue: NullTranslations | None = None) -> Iterator[None]:
    """Speak this language meanwhile; what its catalogue lacks, and every language there is none for, is English."""
    known = catalogue or translation("backcut", LOCALE, [code], fallback=True)
    token = _spoken.set((code, known))
    try:
        yield
    finally:
        _spoken.reset(token)
