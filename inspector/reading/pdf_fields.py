"""What was filled into the form of a PDF: each field with its page. Knows no part and no record."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults
from inspector.reading.sheet_fields import field_steps

MOST_BYTES = 50_000_000
MOST_PAGES = 500
MOST_FIELDS = 50_000
_LONGEST_NAME = 500
_END = ("remarks",)  # below this field people sign
# what some programs lay over a page instead of filling in its fields
_LAID_OVER = {"/FreeText": "text", "/Ink": "ink", "/Stamp": "a stamp", "/Line": "a line", "/Square": "a box"}
_LAID_OVER |= {"/Circle": "a ring", "/Polygon": "a shape", "/PolyLine": "a line", "/Highlight": "a mark"}


@dataclass(frozen=True)
class Filled:
    """A field that was filled in or ticked; for a tick the text is empty."""

    steps: tuple[str, ...]
    text: str
    page: int
    number: int
    called: str

    def fault(self, file: str, text: str) -> Fault:
        """A fault of this field."""
        return Fault(file, self.page, self.number, f"page {self.page}, field “{self.called}”: {text}")


def filled_fields(path: Path) -> list[Filled]:
    """Every field of a sheet that holds something, in the order of the pages. Raises Faults."""
    from pypdf import PdfReader
    from pypdf.errors import PyPdfError

    try:
        raw = _bytes(path)
        reader = PdfReader(io.BytesIO(raw))
        if reader.is_encrypted:
            raise _fault(path, "this PDF is locked; save it without a password")
        if len(reader.pages) > MOST_PAGES:
            raise _fault(path, f"this PDF has {len(reader.pages)} pages; a sheet has at most {MOST_PAGES}")
        over = _laid_over(reader, path)
        if over:
            raise Faults(over)
        known, filled = 0, []
        for page, number, widget in _widgets(reader):
            if number > MOST_FIELDS:
                raise _fault(path, "this PDF has more fields than any sheet")
            steps = field_steps(_name(widget))
            if steps is None:
                continue
            known += 1
            text = _text(widget)
            if text is not None:
                filled.append(Filled(steps, text, page, number, _called(widget)))
    except OSError as error:
        raise _fault(path, f"this file cannot be read: {error.strerror or 'no reason is known'}") from None
    except (PyPdfError, RecursionError, ValueError, KeyError, IndexError, TypeError, AttributeError) as error:
        reason = "this PDF is damaged and cannot be read; save it once more with the program it was filled in with"
        raise _fault(path, reason) from error
    if not known:
        reason = (
            "this PDF has no fields of a sheet made by `inspector sheet`; a scan or a print cannot be read back"
        )
        raise _fault(path, reason)
    return filled


def _fault(path: Path, text: str) -> Faults:
    return Faults([Fault(str(path), 1, 1, text)])


def _bytes(path: Path) -> bytes:
    with path.open("rb") as file:
        raw = file.read(MOST_BYTES + 1)
    if len(raw) > MOST_BYTES:
        raise _fault(path, f"the file is larger than {MOST_BYTES // 1_000_000} MB; that is too much for a sheet")
    return raw


def _widgets(reader: Any) -> Iterator[tuple[int, int, Any]]:
    """Every field that shows on a page, with the page and its number there."""
    for page_number, page in enumerate(reader.pages, 1):
        number = 0
        for reference in page.get("/Annots") or ():
            widget = reference.get_object()
            if widget is not None and widget.get("/Subtype") == "/Widget":
                number += 1
                yield page_number, number, widget


def _laid_over(reader: Any, path: Path) -> list[Fault]:
    """What was written or drawn on the pages instead of into the fields; a signature at the end is let be."""
    found = []
    for page_number, page in enumerate(reader.pages, 1):
        annotations = [one.get_object() for one in page.get("/Annots") or ()]
        signed_below = min(
            (min(_heights(one)) for one in annotations if one and field_steps(_name(one)) == _END), default=0.0
        )
        for one in annotations:
            what = _LAID_OVER.get(str(one.get("/Subtype"))) if one else None
            if what is None or max(_heights(one)) <= signed_below:
                continue
            words = " ".join(str(one.get("/Contents") or "").split())
            said = f", “{words[:60]}”," if words else ""
            text = f"page {page_number}: {what}{said} was laid over the page, in no field, and cannot be read; "
            found.append(
                Fault(str(path), page_number, 1, f"{text}fill in or tick the field itself, and delete it")
            )
    return found


def _heights(annotation: Any) -> tuple[float, float]:
    """Where its lower and upper edge lie; a box that is not told reaches up the whole page."""
    edges = annotation.get("/Rect") or (0, 0, 0, 10_000)
    return float(edges[1]), float(edges[3])


def _inherited(widget: Any, key: str) -> Any:
    """What the field says, or the field above it: some programs put one field and its box apart."""
    for _ in range(4):
        if key in widget:
            return widget[key]
        if "/Parent" not in widget:
            return None
        widget = widget["/Parent"]
    return None


def _name(widget: Any) -> str:
    name = _inherited(widget, "/T")
    return str(name) if name is not None and len(str(name)) <= _LONGEST_NAME else ""


def _called(widget: Any) -> str:
    return " ".join(str(_inherited(widget, "/TU") or _name(widget)).split())


def _text(widget: Any) -> str | None:
    """What was typed; an empty text for a tick; None where nothing was filled in."""
    if _inherited(widget, "/FT") == "/Btn":
        state = _inherited(widget, "/V")
        state = widget.get("/AS") if state is None else state
        return "" if state is not None and str(state) not in ("/Off", "Off", "") else None
    text = _plain(_inherited(widget, "/V")).replace("\r\n", "\n").replace("\r", "\n").strip()
    return text or None


def _plain(value: Any) -> str:
    """A text as it stands, or in the forms that some programs give it: a name, or a stream (ISO 32000-1)."""
    from pypdf.generic import NameObject, StreamObject, create_string_object

    if isinstance(value, StreamObject):
        return str(create_string_object(value.get_data()))
    return str(value).removeprefix("/") if isinstance(value, NameObject) else "" if value is None else str(value)
