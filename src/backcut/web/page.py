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
    ahead = "\n".join(f'<link rel="modulepreload" href="/static/{name}">' for name in _modules())
    return (
        frame.replace("<!-- modules -->", ahead)
        .replace("<!-- marks -->", marks)
        .replace("<!-- logo -->", LOGO)
        .replace("<!-- light -->", LIGHT)
    )


def _modules() -> list[str]:
    """Every module the page needs, so that the browser fetches them at once and not one after the other."""
    own = files("backcut.web").joinpath("static", "floor")
    board = files("backcut.page").joinpath("static", "board")
    named = [("floor", own, ()), ("board", board, ("page.js", "findings.js", "types.js"))]
    return [
        f"{folder}/{file.name}"
        for folder, there, other in named
        for file in sorted(there.iterdir(), key=lambda file: file.name)
        if file.name.endswith(".js") and file.name not in other
    ]
