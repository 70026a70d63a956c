"""Lengths: exact feet and inches, a coach's tape measure read from text, and metres written back both ways."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from backcut.errors import CourtError

FOOT_M = 0.3048  # international foot, exact by definition (1959 agreement)
INCH_M = 0.0254  # international inch, exact by definition (1959 agreement)

_NUMBER = r"(?:\d+(?:[.,]\d+)?|[.,]\d+)"
_METRIC = re.compile(rf"(?P<value>{_NUMBER})\s*(?P<unit>mm|cm|m|metres?|meters?)?")
_IMPERIAL = re.compile(
    rf"(?:(?P<feet>{_NUMBER})\s*(?:ft|feet|foot|'|\u2032))?\s*"
    rf"(?:(?P<inches>{_NUMBER})?\s*(?:(?P<above>\d+)\s*/\s*(?P<below>\d+))?\s*(?:in|inch|inches|\"|\u2033|''))?"
)
_METRIC_M = {"mm": 0.001, "cm": 0.01}


def feet(whole_ft: float, inches_in: float = 0.0) -> float:
    """Metres in so many feet and inches, exact to the last bit a float can hold: `feet(23, 9)` is 7.239."""
    return float((Fraction(whole_ft) * 12 + Fraction(inches_in)) * Fraction(254, 10000))


def metres_from_text(text: str) -> float:
    """Metres in a length as a coach writes it: "25.6 m", "305 cm", "84 ft", "19 ft 9 in", "22 ft 1 3/4 in", "28".

    A bare number is metres. Raises: CourtError if the text is no length.
    """
    words = " ".join(text.lower().split())
    metric = _METRIC.fullmatch(words)
    if metric:
        return _decimal(metric["value"]) * _METRIC_M.get(metric["unit"] or "m", 1.0)
    imperial = _IMPERIAL.fullmatch(words)
    if imperial and words and (imperial["below"] or "1").strip("0") and any(imperial.group("feet", "inches", "above")):
        parts = [Fraction(_decimal(imperial[part] or "0")) for part in ("feet", "inches")]
        part_of_inch = Fraction(int(imperial["above"]), int(imperial["below"])) if imperial["above"] else Fraction(0)
        return float((parts[0] * 12 + parts[1] + part_of_inch) * Fraction(254, 10000))
    raise CourtError(f'"{text.strip()}" is no length. Write metres or feet: "25.6 m", "84 ft", "19 ft 9 in".')


def floor_from_text(text: str) -> tuple[float, float]:
    """Length and width in metres of a floor written "26x14", "26 m x 14 m" or "84 ft x 50 ft".

    Raises: CourtError if it is not two lengths with an x between them.
    """
    sides = re.split(r"[x\u00d7]", text.lower())
    if len(sides) != 2 or not all(side.strip() for side in sides):
        raise CourtError(f'"{text.strip()}" is no floor. Write length x width: "26x14" or "84 ft x 50 ft".')
    return metres_from_text(sides[0]), metres_from_text(sides[1])


def in_metres(length_m: float) -> str:
    """A length as a coach reads it in metres: three decimals where the rule book needs them, else two."""
    thousandths = round(length_m * 1000)
    return f"{length_m:.2f} m" if thousandths % 10 == 0 else f"{length_m:.3f} m"


def in_feet(length_m: float) -> str:
    """A length in feet and inches, to the nearest eighth of an inch: "22 ft 1 3/4 in"."""
    eighths = round(Fraction(length_m) / Fraction(254, 10000) * 8)
    whole_ft, rest = divmod(abs(eighths), 96)
    whole_in, eighth = divmod(rest, 8)
    part = f"{Fraction(eighth, 8)}" if eighth else ""
    inches = " ".join(word for word in (str(whole_in) if whole_in or not part else "", part) if word)
    sign = "-" if eighths < 0 else ""
    if rest == 0:
        return f"{sign}{whole_ft} ft"
    return f"{sign}{whole_ft} ft {inches} in" if whole_ft else f"{sign}{inches} in"


def _decimal(text: str) -> float:
    value = float(text.replace(",", "."))
    if not math.isfinite(value):
        raise CourtError(f'"{text}" is no length.')
    return value
