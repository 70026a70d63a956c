"""The floor's page: one frame of markup with the marks in it; the script fills it with what is on the floor."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from backcut.page.document import LIGHT, LOGO
from backcut.picture.marks import defs


@cache
def page() -> str:
    """The page that opens the floor. It holds no words of any book, so it is the same for everybody."""
    frame = files("backcut.web").joinpath("static", "frame.html").read_text(encoding="utf-8")
    marks = f'<svg class="unseen" aria-hidden="true">{defs().removesuffix("</defs>")}<g id="ground"></g></defs></svg>'
    return frame.replace("<!-- marks -->", marks).replace("<!-- logo -->", LOGO).replace("<!-- light -->", LIGHT)
