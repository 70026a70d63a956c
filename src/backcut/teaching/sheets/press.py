"""The press: a template and its words become a PDF, vector, fonts embedded, the same bytes every time."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path
from typing import Any

import typst

from backcut.language import direction, language, say
from backcut.page.plain import font_files
from backcut.teaching.sheets.paper import Paper, Stamp


def printed(template: str, paper: Paper, stamp: Stamp, data: Mapping[str, Any]) -> bytes:
    """The PDF of a template of `typ/`. Words go in as data only, so no word of a coach is ever read as markup."""
    folder = Path(str(files("backcut.teaching.sheets"))) / "typ"
    whole = {
        "paper": {"width": paper.width_mm, "height": paper.height_mm},
        "lang": language().partition("_")[0],
        "dir": direction(),
        "stamp": stamp.words,
        "title": stamp.title,
        "page": say("Page {n} of {all}"),
        **data,
    }
    noon = datetime(stamp.dated.year, stamp.dated.month, stamp.dated.day, 12, tzinfo=UTC)
    pdf = typst.compile(
        str(folder / f"{template}.typ"),
        root=str(folder),
        font_paths=[str(Path(font_files()[0]).parent)],
        ignore_system_fonts=True,
        format="pdf",
        sys_inputs={"data": json.dumps(whole, ensure_ascii=False)},
        timestamp=int(noon.timestamp()),
    )
    assert isinstance(pdf, bytes)  # a PDF is one file, never one a page
    return pdf
