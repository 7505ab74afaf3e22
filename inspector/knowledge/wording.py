"""The fixed words that a user reads, from `report_templates/words/en.toml`; every step takes them from here."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from inspector.knowledge.shipped import shipped


@cache
def words() -> Mapping[str, Any]:
    """All fixed words, by section."""
    text = (shipped("report_templates") / "words" / "en.toml").read_text(encoding="utf-8")
    return MappingProxyType(tomllib.loads(text))
