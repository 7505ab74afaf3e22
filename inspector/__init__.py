"""What an owner saw on a motorcycle, judged by rules: `read`, `assess`, `render` are the calls of a notebook."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.reading.inspection import Inspection
    from inspector.weighing.assessment import Assessment

__all__ = ["assess", "read", "render"]


def read(path: str | Path) -> Inspection:
    """Read a record. Raises `inspector.knowledge.faults.Faults` with every fault of the file."""
    from inspector.knowledge.library import knowledge
    from inspector.reading.record import read_record

    return read_record(Path(path), knowledge())


def assess(inspection: Inspection) -> Assessment:
    """Derive, judge and weigh one inspection. Raises `inspector.judging.engine.RuleError`."""
    from inspector.deriving.facts import derive_facts
    from inspector.judging.judge import judge
    from inspector.knowledge.library import knowledge
    from inspector.weighing.weigh import weigh

    known = knowledge()
    return weigh(judge(derive_facts(inspection, known), known), known)


def render(assessment: Assessment, reader: str, photo_folder: str | Path | None = None) -> str:
    """The report as one HTML document for `buyer`, `owner` or `mechanic`, which needs no other file.

    With the folder of the record the photos that it names are inside. Raises ValueError for another reader.
    """
    from inspector.reporting.htmlfile import html_file

    return html_file(assessment, reader, Path(photo_folder) if photo_folder is not None else None)
