"""All courts by name, found by scanning the rule books."""

from __future__ import annotations

import importlib
import pkgutil
from types import MappingProxyType

from backcut.court import rulebooks
from backcut.court.check import checked
from backcut.court.record import Court
from backcut.errors import CourtError


def _scanned() -> dict[str, Court]:
    found: dict[str, Court] = {}
    for module in sorted(pkgutil.iter_modules(rulebooks.__path__), key=lambda module: module.name):
        record = importlib.import_module(f"{rulebooks.__name__}.{module.name}").COURT
        if record.name in found:
            raise CourtError(f'Two rule books are called "{record.name}"; give one another name.')
        found[record.name] = checked(record)
    return found


COURTS = MappingProxyType(_scanned())


def court(name: str) -> Court:
    """The court of this name, in any case. Raises: CourtError naming the courts there are."""
    known = COURTS.get(name.strip().lower())
    if known is None:
        raise CourtError(f'No court is called "{name.strip()}". The courts are: {", ".join(COURTS)}.')
    return known
