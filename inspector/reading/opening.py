"""Open whatever holds a record: a YAML or JSON file, a table, the filled sheet as PDF, the zip of the page."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import Document, decode, parse
from inspector.reading.archive import unpack
from inspector.reading.inspection import Inspection
from inspector.reading.record import load_document, read_document
from inspector.reading.sheet_pdf import sheet_document
from inspector.reading.table import is_table


@contextmanager
def opened_record(
    path: Path, knowledge: Knowledge, today: date | None = None
) -> Iterator[tuple[Inspection, Path]]:
    """What the file says, and the folder its photos lie in; of a zip that folder is gone afterwards.

    Raises Faults.
    """
    with opened_document(path) as (document, folder):
        yield read_document(document, folder, knowledge, today or date.today()), folder


@contextmanager
def opened_document(path: Path) -> Iterator[tuple[Document, Path]]:
    """The record of the file as plain data with its places, and the folder its photos lie in. Raises Faults."""
    start = _start(path)
    if start.startswith(b"%PDF-"):
        yield sheet_document(path), path.parent
    elif is_zip(path):
        with tempfile.TemporaryDirectory(prefix="inspector-record-") as folder:
            yield _from_zip(path, Path(folder)), Path(folder)
    else:
        yield load_document(path), path.parent


def is_zip(path: Path) -> bool:
    """Whether the file is what the page for the phone saves."""
    return _start(path).startswith(b"PK") and not is_table(path)


def _start(path: Path) -> bytes:
    try:
        if not path.is_file():
            return b""  # read_record says what is wrong; a pipe can be read once only
        with path.open("rb") as file:
            return file.read(5)
    except OSError:
        return b""


def _from_zip(path: Path, folder: Path) -> Document:
    try:
        record = unpack(path, folder)
        name = f"{path}/{record.name}"
        return parse(decode(record.read_bytes(), name), name, keep_faults=True)
    except OSError as error:
        reason = f"this file cannot be unpacked: {error.strerror or 'no reason is known'}"
        raise Faults([Fault(str(path), 1, 1, reason)]) from None
