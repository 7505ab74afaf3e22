"""The whole assessment as a JSON file, written whole or not at all."""

from __future__ import annotations

from pathlib import Path

from inspector.reporting.files import write_whole
from inspector.weighing.assessment import Assessment


def write_json(assessment: Assessment, path: Path) -> None:
    """Write the assessment to `path`. Raises OSError."""
    write_whole(path, assessment.model_dump_json(indent=1).encode())
