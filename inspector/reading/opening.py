"""Open whatever holds a record: a YAML or JSON file, a table, the filled sheet as PDF, the zip of the page."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import decode, parse
from inspector.reading.archive import unpack
from inspector.reading.inspection import Inspection
from inspector.reading.record import read_document, read_record
from inspector.reading.sheet_pdf import read_sheet
from inspector.reading.table import is_table


@contextmanager
def opened_record(
    path: Path, knowledge: Knowledge, today: date | None = None
) -> Iterator[tuple[Inspection, Path]]:
    """What the file says, and the folder its photos lie in; of a zip that folder is gone afterwards.

    Raises Faults.
    """
    start = _start(path)
    if start.startswith(b"%PDF-"):
        yield read_sheet(path, knowledge, today or date.today()), path.parent
    elif start.startswith(b"PK") and not is_table(path):
        with tempfile.TemporaryDirectory(prefix="inspector-record-") as folder:
            yield _from_zip(path, Path(folder), knowledge, today or date.today()), Path(folder)
    else:
        yield read_record(path, knowledge, today), path.parent


def _start(path: Path) -> bytes:
    try:
        if not path.is_file():
            return b""  # read_record says what is wrong; a pipe can be read once only
        with path.open("rb") as file:
            return file.read(5)
    except OSError:
        return b""


def _from_zip(path: Path, folder: Path, knowledge: Knowledge, today: date) -> Inspection:
    try:
        record = unpack(path, folder)
        name = f"{path}/{record.name}"
        document = parse(decode(record.read_bytes(), name), name, keep_faults=True)
    except OSError as error:
        reason = f"this file cannot be unpacked: {error.strerror or 'no reason is known'}"
        raise Faults([Fault(str(path), 1, 1, reason)]) from None
    return read_document(document, folder, knowledge, today)
