"""The whole assessment as a JSON file, written whole or not at all, and the JSON Schema it keeps to."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from inspector.reporting.files import write_whole
from inspector.weighing.assessment import Assessment


def write_json(assessment: Assessment, path: Path) -> None:
    """Write the assessment to `path`. Raises OSError."""
    write_whole(path, assessment.model_dump_json(indent=1).encode())


def assessment_schema() -> dict[str, Any]:
    """The JSON Schema (2020-12) of the file: every heading that can stand in it, none besides."""
    schema = Assessment.model_json_schema(mode="serialization")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
