"""The font of form fields: one weight of the report's font, without the tables that only a typesetter needs.

A PDF carries the font of its fields whole, because nobody knows what will be typed. From the font with all its
weights that takes half a minute; from this one it takes no time.
"""

from __future__ import annotations

import io
from functools import cache

from inspector.reporting.assets import assets

# what a person may type: Latin with its accents, Greek, Cyrillic, signs of units, quotes and dashes
_TYPED = (
    *range(0x20, 0x7F),
    *range(0xA0, 0x180),
    *range(0x370, 0x400),
    *range(0x400, 0x460),
    *range(0x2010, 0x2027),
    0x2032,
    0x2033,
    0x20AC,
    0x2212,
)


@cache
def form_font() -> bytes:
    """The font file."""
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont
    from fontTools.varLib.instancer import instantiateVariableFont

    font = TTFont(io.BytesIO(assets()["text.ttf"]), recalcTimestamp=False)
    options = Options(layout_features=[], drop_tables=["GSUB", "GPOS", "GDEF", "HVAR", "STAT", "MVAR"])
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=_TYPED)
    subsetter.subset(font)
    for tag in ("GSUB", "GPOS", "GDEF", "STAT"):
        if tag in font:
            del font[tag]
    single = instantiateVariableFont(font, {"wght": 400})
    for record in single["name"].names:
        if record.nameID in (1, 3, 4, 6, 16):
            record.string = "Form"
    into = io.BytesIO()
    single.save(into)
    return into.getvalue()
