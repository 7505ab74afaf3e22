"""Collect the faults of one record, and read what every section shares: headings, texts, lists of texts."""

from __future__ import annotations

from typing import Any

from inspector.knowledge.faults import Fault, Faults, not_allowed, shown
from inspector.knowledge.yamlfile import Document, Path

MOST_FAULTS = 200
LONGEST_TEXT = 4000
_UNREADABLE = "a text cannot begin with"


class Collector:
    """All faults of a record; reading goes on after each of them."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.faults: list[Fault] = list(document.faults)
        self._unreadable = {(f.line, f.column) for f in document.faults if f.text.startswith(_UNREADABLE)}

    def fault(self, path: Path, text: str, *, key: bool = False) -> None:
        """Note a fault at `path`. Raises Faults when there are too many to be of use."""
        fault = self.document.fault(path, text, key=key)
        if (fault.line, fault.column) in self._unreadable:
            return  # said already why nothing can be read there
        self.faults.append(fault)
        if len(self.faults) >= MOST_FAULTS:
            text = f"there are {MOST_FAULTS} faults up to here; mend these first, the rest was not read"
            raise Faults([*self.faults, Fault(fault.file, fault.line, fault.column + 1, text)])

    def finish(self) -> None:
        """Raise Faults when there is any."""
        if self.faults:
            raise Faults(self.faults)

    def headings(self, path: Path, section: dict[str, Any], allowed: tuple[str, ...]) -> None:
        """Refuse every heading that is not allowed here."""
        for name, value in section.items():
            if name not in allowed:
                tip = "" if value is not None else ". A text with a comma needs quotes around it between { and }"
                self.fault((*path, name), not_allowed("the heading", name, allowed) + tip, key=True)

    def mapping(self, path: Path, data: Any) -> dict[str, Any]:
        """What stands below a heading; nothing when the heading is left empty."""
        if data is None:
            return {}
        if not isinstance(data, dict):
            self.fault(path, f"`{path[-1]}` must have headings below it, not {shown(data)}")
            return {}
        return data

    def text(self, path: Path, value: Any) -> str | None:
        """One text, or None when nothing stands there or it is no text."""
        if value is None:
            return None
        if not isinstance(value, str):
            self.fault(path, f"plain text is wanted here, not {shown(value)}")
            return None
        if len(value) > LONGEST_TEXT:
            self.fault(path, f"the text has {len(value)} characters; at most {LONGEST_TEXT}")
            return None
        return value.strip() or None

    def texts(self, path: Path, value: Any) -> list[tuple[Path, str]]:
        """A text or a list of texts, each with where it stands."""
        entries = (
            [((*path, i), one) for i, one in enumerate(value)] if isinstance(value, list) else [(path, value)]
        )
        read = ((where, self.text(where, one)) for where, one in entries)
        return [(where, one) for where, one in read if one is not None]
