"""The versions of one book: texts put by in a folder, each under the time it was put there, not without end."""

from __future__ import annotations

import re
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path

from backcut.files import digest, digest_of, write_whole

#: Versions of a book that are put by (own design): an evening's changes, and of the days before the last of each.
MOST_RECENT, MOST_DAYS = 50, 30

_STAMP = re.compile(r"2\d{3}-\d\d-\d\dT\d\d-\d\d-\d\d\.\d{6}")
_CLOCK = "%Y-%m-%dT%H-%M-%S.%f"


def stamps_in(folder: Path) -> list[str]:
    """The times of all versions in a folder, the newest first."""
    found = folder.glob("*.txt") if folder.is_dir() else ()
    return sorted((file.stem for file in found if _is_stamp(file.stem)), reverse=True)


def put_by(folder: Path, text: str) -> None:
    """Another version, unless it is the newest already; the oldest make room. Raises: BackcutError, OSError."""
    known = stamps_in(folder)
    if known and digest_of(folder / f"{known[0]}.txt") == digest(text):
        return
    now = datetime.now(UTC).replace(tzinfo=None)
    if known:  # after a clock that was set back, or twice within a tick of it, the newest is still the newest
        now = max(now, datetime.strptime(known[0], _CLOCK) + timedelta(microseconds=1))
    stamp = now.strftime(_CLOCK)
    write_whole(folder / f"{stamp}.txt", text)
    for old in _too_many([stamp, *known]):
        with suppress(OSError):  # it stays a while longer
            (folder / f"{old}.txt").unlink()


def _is_stamp(name: str) -> bool:
    if not _STAMP.fullmatch(name):
        return False
    try:
        datetime.strptime(name, _CLOCK)
    except ValueError:  # a day there is not
        return False
    return True


def _too_many(stamps: list[str]) -> list[str]:
    """The versions to let go, of all with the newest first: of each day the last one stays longer."""
    days: dict[str, str] = {}
    for stamp in stamps[MOST_RECENT:]:
        days.setdefault(stamp[:10], stamp)
    stay = {*stamps[:MOST_RECENT], *list(days.values())[:MOST_DAYS]}
    return [stamp for stamp in stamps if stamp not in stay]
