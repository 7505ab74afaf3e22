"""The report as one HTML document that fetches nothing: for a browser, and for the PDF."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from importlib.resources.abc import Traversable
from typing import TYPE_CHECKING

from inspector.knowledge.shipped import shipped
from inspector.knowledge.wording import words
from inspector.reporting.carried import ATTACHED_NAME, Carried, printed_fingerprints
from inspector.reporting.costs_text import cost_line, costs_notes, costs_sum, sizes
from inspector.reporting.due_text import due_what, due_when
from inspector.reporting.figures import Figures
from inspector.reporting.glyphs import spelled
from inspector.reporting.page import make_page, shortened
from inspector.reporting.photos import Gallery
from inspector.reporting.places import at
from inspector.reporting.svg import coverage_bar, mark
from inspector.weighing.assessment import Assessment

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

PAPERS = {"a4": "A4", "letter": "letter"}  # as a page calls them


def to_html(assessment: Assessment, reader: str, photos: Gallery | None = None) -> str:
    """The report for `buyer`, `owner` or `mechanic`. Raises ValueError for another reader."""
    return _render(assessment, reader, paper="", photos=photos)


def to_paper(
    assessment: Assessment,
    reader: str,
    carried: Carried | None = None,
    size: str = "a4",
    photos: Gallery | None = None,
    spelled_out: Sequence[str] = (),
) -> str:
    """The same, with the font and photos that the PDF's fetcher knows. Raises ValueError for a reader or size.

    `spelled_out` are letters that no font can show; the page says that their numbers stand in their place.
    """
    if size not in PAPERS:
        raise ValueError(f"`{size}` is no size of paper. Allowed: {', '.join(PAPERS)}")
    return _render(assessment, reader, PAPERS[size], carried, photos, spelled_out)


def page_style(size: str) -> str:
    """The style of a page on this size of paper."""
    return str(_style(PAPERS[size]))


def _render(
    assessment: Assessment,
    reader: str,
    paper: str,
    carried: Carried | None = None,
    photos: Gallery | None = None,
    spelled_out: Sequence[str] = (),
) -> str:
    page = make_page(assessment, reader)
    template = environment().get_template(f"{reader}.html")
    inside = {"file": ATTACHED_NAME, "fingerprints": printed_fingerprints(carried)} if carried else None
    return template.render(
        a=assessment,
        page=page,
        w=words(),
        paper=paper,
        carried=inside,
        figures=Figures(assessment),
        svg=_drawing if paper else _drawing_on_screen,
        photos=photos or Gallery(),
        spelled_out=spelled_out,
    )


@cache
def environment() -> Environment:
    """The templates of `report_templates/`, with what they may call."""
    from jinja2 import DictLoader, Environment, StrictUndefined

    made = Environment(
        loader=DictLoader(dict(_templates(shipped("report_templates"), ""))),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters["plain"] = lambda name: name.replace("_", " ")
    made.filters["short"] = shortened
    made.filters["capital"] = lambda text: text[:1].upper() + text[1:]
    made.globals.update(costs_notes=costs_notes, costs_sum=costs_sum, cost_line=cost_line, sizes=sizes)
    made.globals.update(
        at=at, spelled=spelled, due_when=due_when, due_what=due_what, mark=_mark, bar=_bar, style=_style
    )
    return made


def _templates(folder: Traversable, name: str) -> Iterator[tuple[str, str]]:
    for entry in sorted(folder.iterdir(), key=lambda item: item.name):
        if entry.is_dir():
            yield from _templates(entry, f"{name}{entry.name}/")
        elif entry.name.endswith(".html"):
            yield f"{name}{entry.name}", entry.read_text(encoding="utf-8")


def _mark(level: str) -> Markup:
    from markupsafe import Markup

    named = words()["level"] if level in words()["level"] else words()["mark"]
    return Markup(mark(level, named[level]))


def _drawing(svg: str) -> Markup:
    """A drawing of ours, whose texts are escaped already."""
    from markupsafe import Markup

    return Markup(svg)


def _drawing_on_screen(svg: str) -> Markup:
    """The same for whatever font a browser has: its letters become narrower instead of running into each other."""
    return _drawing(svg.replace(' textLength="', ' lengthAdjust="spacingAndGlyphs" textLength="'))


def _bar(looked: int, expected: int, title: str) -> Markup:
    from markupsafe import Markup

    return Markup(coverage_bar(looked, expected, title))


def _style(paper: str | bool, *more: str) -> Markup:
    """The style sheets of a report, and `more` after them; on paper with the font."""
    from markupsafe import Markup

    folder = shipped("report_templates")
    fonts, *sheets = (
        (folder / name).read_text(encoding="utf-8") for name in ("fonts.css", "style.css", "print.css", *more)
    )
    if not paper:
        screen = (folder / "screen.css").read_text(encoding="utf-8")
        return Markup("".join(sheets) + screen)
    size = paper if isinstance(paper, str) else "A4"
    told, sheet = words()["text"], _with_axis("".join(sheets)).replace("size: A4;", f"size: {size};")
    return Markup(fonts + sheet.replace('"page "', f'"{told["page_of"]} "').replace('" of "', f'" {told["of"]} "'))


def _with_axis(sheet: str) -> str:
    """Name the weight as an axis of the font, too: else WeasyPrint lays out with its thinnest letters."""
    return re.sub(r"font-weight: (\d+);", r'font-weight: \1; font-variation-settings: "wght" \1;', sheet)
