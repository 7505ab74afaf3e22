"""The text of a record, for whoever wants to judge it again later."""

from __future__ import annotations

import json
import zipfile
from datetime import date
from pathlib import Path

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import MOST_BYTES, decode, parse
from inspector.reading.archive import RECORDS
from inspector.reading.inspection import Inspection
from inspector.reading.record import read_document
from inspector.reading.sheet_pdf import sheet_document
from inspector.reading.table import is_table, read_table


def record_text(path: Path) -> str | None:
    """Text of the file, of the record in a zip, or of what was filled into a sheet.

    None for a pipe, which can be read only once. Raises Faults when the file cannot be read.
    """
    name = str(path)
    try:
        if not path.is_file():
            return None
        with path.open("rb") as file:
            raw = file.read(MOST_BYTES + 1)
        if raw.startswith(b"%PDF-"):
            return json.dumps(sheet_document(path).data, ensure_ascii=False, indent=1)
        if is_table(path):
            return json.dumps(read_table(raw, path).data, ensure_ascii=False, indent=1)
        if raw.startswith(b"PK"):
            return decode(_record_in(path), name)
    except (OSError, zipfile.BadZipFile, KeyError, StopIteration) as error:
        raise Faults([Fault(name, 1, 1, f"this file cannot be read again: {error}")]) from None
    return decode(raw, name)


def read_text(text: str, name: str, knowledge: Knowledge) -> Inspection:
    """Read the text of a record; its photos are not looked for. Raises Faults."""
    return read_document(parse(text, name, keep_faults=True), None, knowledge, date.today())


def _record_in(archive: Path) -> bytes:
    with zipfile.ZipFile(archive) as opened:
        inside = next(one for one in opened.namelist() if one in RECORDS)
        with opened.open(inside) as file:
            return file.read(MOST_BYTES + 1)
