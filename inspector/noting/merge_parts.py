"""What the merging of two part records is made from: the parts, a contradiction, and who settles it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from inspector.knowledge.yamlfile import Document, Path
from inspector.reading.inspection import Inspection, Measured, Value


@dataclass(frozen=True)
class Part:
    """One of the two records: its document and what it says."""

    document: Document
    inspection: Inspection

    def told(self, path: Path, text: object) -> str:
        """A line of this record as it is shown: where it stands, and what it says."""
        return str(self.document.fault(path, str(text), key=True))


@dataclass(frozen=True)
class Contradiction:
    """Two answers to one question; `lines` are those of the first and of the second record."""

    what: str
    lines: tuple[str, str]


Settle = Callable[[Contradiction], int | None]  # 0: the first holds, 1: the second, None: nobody settles it


@dataclass
class Merged:
    """Plain data of the merged record, what stays contradictory, and what was taken from one side and is told."""

    data: dict[str, Any] = field(default_factory=dict)
    contradictions: list[Contradiction] = field(default_factory=list)
    taken: list[str] = field(default_factory=list)


class Judge:
    """Puts each contradiction to whoever settles it, and keeps those that nobody does."""

    def __init__(self, parts: tuple[Part, Part], settle: Settle, result: Merged) -> None:
        self.parts = parts
        self.settle = settle
        self.result = result

    def pick(self, what: str, lines: tuple[str, str]) -> int:
        """Which of the two holds. When nobody settles it the contradiction is kept, and the result is not used."""
        contradiction = Contradiction(what, lines)
        chosen = self.settle(contradiction)
        if chosen is None:
            self.result.contradictions.append(contradiction)
            return 0
        return chosen


def same_value(one: Value, other: Value) -> bool:
    """Whether two answers say the same: 1.2 mm and 1.20 mm do, with another tool they do not."""
    if isinstance(one, Measured) and isinstance(other, Measured):
        scale = max(abs(one.amount.base), abs(other.amount.base), 1e-12)
        near = abs(one.amount.base - other.amount.base) <= 1e-9 * scale
        return near and (one.uncertainty, one.tool, one.stated) == (other.uncertainty, other.tool, other.stated)
    return one == other


def at(data: Any, path: Iterable[Any]) -> Any:
    """What stands at a path of plain data; None when nothing does."""
    for step in path:
        data = data.get(step) if isinstance(data, dict) else None
    return data


def listed(value: Any) -> list[str]:
    """A text or a list of texts as a list."""
    if value in (None, ""):
        return []
    return [str(one) for one in value] if isinstance(value, list) else [str(value)]


def shown(entry: Any) -> str:
    """An answer with its tool, note and so on in one line."""
    if not isinstance(entry, dict):
        return str(entry)
    return ", ".join(str(one) if name == "value" else f"{name}: {one}" for name, one in entry.items())
