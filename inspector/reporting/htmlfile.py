"""The report as one HTML file that needs nothing else, with links to its sections; written whole or not."""

from __future__ import annotations

import base64
import itertools
import re
from dataclasses import replace
from pathlib import Path

from inspector.knowledge.wording import words
from inspector.reporting.files import write_whole
from inspector.reporting.html import to_html
from inspector.reporting.photos import Gallery, gallery
from inspector.weighing.assessment import Assessment

_HEADING = re.compile(r"<h2>(.*?)</h2>", re.DOTALL)  # text of a record is escaped and holds none
_MAIN = "<main>"


def write_html(assessment: Assessment, reader: str, path: Path, photo_folder: Path | None = None) -> None:
    """Write the page to `path`, with the photos that lie below `photo_folder`.

    Raises ValueError for an unknown reader and OSError.
    """
    write_whole(path, html_file(assessment, reader, photo_folder).encode())


def html_file(assessment: Assessment, reader: str, photo_folder: Path | None = None) -> str:
    """The page, with its photos inside and links to its sections. Raises ValueError for an unknown reader."""
    page = to_html(assessment, reader, _inside(gallery(assessment, photo_folder)))
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


def _inside(photos: Gallery) -> Gallery:
    """The photos with their content in the place of an address."""
    files = {f"asset:{name}": content for name, content in photos.files.items()}
    inside = {
        name: f"data:image/jpeg;base64,{base64.b64encode(files[address]).decode()}"
        for name, address in photos.addresses.items()
    }
    return replace(photos, addresses=inside)
