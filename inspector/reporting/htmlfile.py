"""The report as one HTML file that needs nothing else, written whole or not at all."""

from __future__ import annotations

from pathlib import Path

from inspector.reporting.files import write_whole
from inspector.reporting.html import to_html
from inspector.weighing.assessment import Assessment


def write_html(assessment: Assessment, reader: str, path: Path) -> None:
    """Write the page to `path`. Raises ValueError for an unknown reader and OSError."""
    write_whole(path, to_html(assessment, reader).encode())
