"""Cut Literata down to what page, paper and clip print: woff2 for the page, plain cuts for the others; and its licence.

    python scripts/make_fonts.py [FOLDER]

Source: the PyPI package fontpkg-literata (SIL Open Font License 1.1). FOLDER is by default the folder the page ships.
"""

from __future__ import annotations

import shutil
import sys
from collections.abc import Mapping
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

#: Basic Latin, the accents of the nearest languages' names, quotation marks, dashes, ellipsis, no-break space.
#: Estimate: what a coach's book in English holds.
GLYPHS = [*range(0x20, 0x7F), 0xA0, 0xAB, 0xB0, 0xB1, 0xB7, 0xBB, 0xBD, 0xD7, 0xE9, 0xEF, 0xF6, 0xFC]
GLYPHS += [0x2009, 0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026, 0x202F, 0x2032, 0x2033, 0x2212]
AXES = {"opsz": (7, 36), "wght": (400, 800)}  # the sizes and weights of the style sheet
FEATURES = ["kern", "liga", "lnum", "tnum", "pnum", "mark", "mkmk", "ccmp", "locl", "calt"]
CUTS = {"Literata[opsz,wght].ttf": "literata-roman.woff2", "Literata-Italic[opsz,wght].ttf": "literata-italic.woff2"}
#: Whoever draws paper and clips knows no axes: one file for each weight, at the optical size of running text.
PLAIN = {
    "Literata[opsz,wght].ttf": {"roman-400": 400, "roman-500": 500, "roman-700": 700},
    "Literata-Italic[opsz,wght].ttf": {"italic-400": 400, "italic-500": 500},
}
OPSZ = 14
SHIPPED = Path(__file__).parent.parent / "src" / "backcut" / "page" / "static" / "fonts"


def cut(source: Path, target: Path, axes: Mapping[str, object], flavor: str | None) -> int:
    """Write the subset of `source` to `target`; returns its size in bytes."""
    font = TTFont(source, recalcTimestamp=False)  # the same bytes on every run
    options = Options()
    options.layout_features = FEATURES
    options.hinting = False
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]  # copyright and licence stay in the file
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=GLYPHS)
    subsetter.subset(font)
    font = instantiateVariableFont(font, axes)
    if "fvar" not in font:  # a cut for one weight says which
        font["OS/2"].usWeightClass = axes["wght"]
    font.flavor = flavor
    font.save(target)
    return target.stat().st_size


def main(folder: Path = SHIPPED) -> None:
    """Cut both fonts, copy the licence, say the sizes."""
    folder.mkdir(parents=True, exist_ok=True)
    package = Path(str(files("fontpkg_literata")))
    for source, target in CUTS.items():
        print(f"{target}: {cut(package / 'files' / source, folder / target, AXES, 'woff2'):,} bytes")
    for source, cuts in PLAIN.items():
        for name, weight in cuts.items():
            target, axes = f"literata-{name}.ttf", {"opsz": OPSZ, "wght": weight}
            print(f"{target}: {cut(package / 'files' / source, folder / target, axes, None):,} bytes")
    shutil.copy(package / "LICENSE", folder / "OFL.txt")
    print(f"from fontpkg-literata {version('fontpkg-literata')}")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
