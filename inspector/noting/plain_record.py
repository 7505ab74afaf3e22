"""Plain data of a record as a YAML or JSON text that a person can read."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from inspector.noting.round_trip import dump, node


def record_yaml(data: Mapping[str, Any]) -> str:
    """The record as YAML, sections apart, in the order they are given."""
    return "\n".join(dump(node({name: below})) for name, below in data.items())


def plain_json(data: Mapping[str, Any]) -> str:
    """The record as JSON, one entry a line."""
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def from_json(text: str) -> dict[str, Any] | None:
    """The data of a record that is written as JSON; None when it is not."""
    if not text.lstrip().startswith("{"):
        return None
    try:
        data: dict[str, Any] = json.loads(text)
    except ValueError:  # YAML between braces
        return None
    return data
