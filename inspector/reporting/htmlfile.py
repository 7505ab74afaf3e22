"""The report as one HTML file that needs nothing else, with links to its sections; written whole or not."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

from inspector.reporting.files import write_whole
from inspector.reporting.html import to_html
from inspector.reporting.words import words
from inspector.weighing.assessment import Assessment

_HEADING = re.compile(r"<h2>(.*?)</h2>", re.DOTALL)  # text of a record is escaped and holds none
_MAIN = "<main>"


def write_html(assessment: Assessment, reader: str, path: Path) -> None:
    """Write the page to `path`. Raises ValueError for an unknown reader and OSError."""
    write_whole(path, html_file(assessment, reader).encode())


def html_file(assessment: Assessment, reader: str) -> str:
    """The page, with links to its sections. Raises ValueError for an unknown reader."""
    page = to_html(assessment, reader)
    titles = _HEADING.findall(page)
    numbers = itertools.count(1)
    page = _HEADING.sub(lambda found: f'<h2 id="part-{next(numbers)}">{found[1]}</h2>', page)
    links = "".join(f'<li><a href="#part-{number}">{title}</a></li>' for number, title in enumerate(titles, 1))
    label = words()["label"]["sections"]
    contents = f'<nav class="contents" aria-label="{label}"><ul>{links}</ul></nav>'
    first = page.index('<h2 id="part-1">') if titles else -1
    verdict = page.rfind("</section>", 0, first)
    if verdict < 0:
        return page.replace(_MAIN, f"{_MAIN}\n{contents}", 1)
    end = verdict + len("</section>")
    return f"{page[:end]}\n{contents}{page[end:]}"
