"""Rebuild the type that the sheets embed, from a folder of Noto Sans TTF files.

Not part of any test run. Usage: python build_fonts.py NOTO_FOLDER OUT_FOLDER

Each style becomes one file: Latin, Greek and Cyrillic of Noto Sans, Hebrew of Noto Sans Hebrew, and the
signs a sheet may hold (arrows, shapes, notes) of Noto Sans Math, Symbols and Symbols 2. Layout tables are
dropped: reportlab reads none. The files are renamed, because they are no longer the originals.
"""

import sys
import tempfile
from pathlib import Path

from fontTools.merge import Merger
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

TEXT = [
    *range(0x20, 0x7F),
    *range(0xA0, 0x250),
    *range(0x2B0, 0x530),
    *range(0x1E00, 0x2000),
    *range(0x2000, 0x2070),
    *range(0x2070, 0x2190),
]
HEBREW = [*range(0x590, 0x600), *range(0xFB1D, 0xFB50)]
SIGNS = [
    *range(0x2190, 0x2200),
    *range(0x2200, 0x2300),
    *range(0x25A0, 0x2600),
    *range(0x2605, 0x2670),
]
SIGNS += [0x2713, 0x2714, 0x2717, 0x2718, 0x2691, 0x2690, 0x26A0, 0x260E, *range(0x2460, 0x2474)]
STYLES = {
    "Regular": ("NotoSans-Regular", "NotoSansHebrew-Regular", "Regular"),
    "Bold": ("NotoSans-Bold", "NotoSansHebrew-Bold", "Bold"),
    "Italic": ("NotoSans-Italic", "NotoSansHebrew-Regular", "Regular"),
    "Poster": ("NotoSans-CondensedExtraBold", "NotoSansHebrew-CondensedExtraBold", "Bold"),
}
KEPT = {"head", "hhea", "hmtx", "maxp", "cmap", "glyf", "loca", "name", "OS/2", "post"}


def _cut(source: Path, wanted: list[int], out: Path) -> Path:
    font = TTFont(source)
    options = Options()
    options.layout_features = []
    options.hinting = False
    options.notdef_outline = True
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=[code for code in wanted if code in font.getBestCmap()])
    subsetter.subset(font)
    for tag in list(font.keys()):
        if tag not in KEPT and tag != "GlyphOrder":
            del font[tag]
    font.save(out)
    return out


def main(noto: Path, out: Path) -> None:
    """Write one TTF a style."""
    for style, (latin, hebrew, signs) in STYLES.items():
        with tempfile.TemporaryDirectory() as scratch:
            taken: set[int] = set()
            parts = []
            for name, wanted in (
                (latin, TEXT),
                (hebrew, HEBREW),
                ("NotoSansMath-Regular", [*TEXT, *SIGNS]),
                (f"NotoSansSymbols-{signs}", [*TEXT, *SIGNS]),
                ("NotoSansSymbols2-Regular", SIGNS),
            ):
                have = set(TTFont(noto / f"{name}.ttf").getBestCmap())
                own = sorted((have & set(wanted)) - taken)
                taken |= set(own)
                parts.append(
                    str(_cut(noto / f"{name}.ttf", own, Path(scratch) / f"{len(parts)}.ttf"))
                )
            merged = Merger().merge(parts)
        first = TTFont(noto / f"{latin}.ttf")
        merged["hhea"].ascent, merged["hhea"].descent = first["hhea"].ascent, first["hhea"].descent
        names = merged["name"]
        grant = first["name"].getDebugName(13), first["name"].getDebugName(0)
        names.names = []
        for name_id, text in (
            (0, f"{grant[1]} (Noto Sans, cut and merged)"),
            (1, "Sequencer Sheet"),
            (2, style),
            (3, f"SequencerSheet-{style}-1"),
            (4, f"Sequencer Sheet {style}"),
            (5, "Version 1.000"),
            (6, f"SequencerSheet-{style}"),
            (13, grant[0]),
            (14, "https://openfontlicense.org"),
        ):
            names.setName(text, name_id, 3, 1, 0x409)
        merged["head"].created = merged["head"].modified = 3_600_000_000
        merged.recalcTimestamp = False
        merged.save(out / f"SequencerSheet-{style}.ttf")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
