"""Plain data of a record as a YAML text that a person can read."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from inspector.noting.round_trip import dump, node


def record_yaml(data: Mapping[str, Any]) -> str:
    """The record as YAML, sections apart, in the order they are given."""
    return "\n".join(dump(node({name: below})) for name, below in data.items())
