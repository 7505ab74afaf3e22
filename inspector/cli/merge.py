"""`inspector merge`: two part records of one inspection as one; contradictions are asked about or reported."""

from __future__ import annotations

import os
import re
import sys
from contextlib import ExitStack
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inspector.cli.common import input_faults, loaded_knowledge, refuse_targets, stop, write

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge
    from inspector.noting.merge_parts import Contradiction, Merged, Part


@click.command("merge")
@click.argument("first", type=click.Path(path_type=Path), metavar="A")
@click.argument("second", type=click.Path(path_type=Path), metavar="B")
@click.option("--out", type=click.Path(path_type=Path), required=True, metavar="FILE", help="Where to write it.")
def command(first: Path, second: Path, out: Path) -> None:
    """Merge the part records A and B of one inspection (same machine kind, date and purpose).

    A and B may be records, tables, filled sheets (PDF) and what the page for the phone saves (zip), whose
    photos are put into a folder `photos` beside FILE. Equal answers become one. A contradiction is asked about
    in a terminal; elsewhere it is reported with both lines, nothing is written, and the exit status is 2.

    Example: inspector merge front.yaml rear.yaml --out whole.yaml
    """
    from inspector.knowledge.wording import words
    from inspector.noting.merge import CannotMerge, merge

    known = loaded_knowledge()
    refuse_targets(first, out)
    refuse_targets(second, out)
    with ExitStack() as opened, input_faults():
        copies: dict[str, Path] = {}
        parts = [_part(path, out, known, opened, copies) for path in (first, second)]
        try:
            result = merge(parts[0], parts[1], known, _ask if sys.stdin.isatty() else lambda _: None)
        except CannotMerge as error:
            stop(str(error), 2)
        for line in result.taken:
            click.echo(line, err=True)
        if result.contradictions:
            _report(result)
        _write(result, out, known, copies)
    if any(_commented(path) for path in (first, second)):
        click.echo(words()["merge"]["comments"], err=True)


def _commented(path: Path) -> bool:
    """Whether a record holds comments, which a merged one cannot keep."""
    from inspector.reading.record import read_bytes

    if path.suffix.lower() not in (".yaml", ".yml"):
        return False
    return re.search(rb"(?m)(?:^|\s)#\s*\S", read_bytes(path)) is not None


def _part(path: Path, out: Path, known: Knowledge, opened: ExitStack, copies: dict[str, Path]) -> Part:
    """A record with the names of its photos as the merged record will find them; `copies` says which to bring."""
    from inspector.noting.merge_parts import Part
    from inspector.reading.opening import is_zip, opened_document
    from inspector.reading.record import read_document

    document, folder = opened.enter_context(opened_document(path))
    inspection = read_document(document, folder, known, date.today())
    packed = copies if is_zip(path) else None
    _move_photos(document.data.get("observations") or {}, folder.resolve(), out.parent.resolve(), packed)
    return Part(document, inspection)


def _move_photos(looks: Any, source: Path, target: Path, packed: dict[str, Path] | None) -> None:
    from inspector.knowledge.wording import words
    from inspector.noting.photo_beside import free_name

    for entry in looks.values() if isinstance(looks, dict) else ():
        if isinstance(entry, dict) and isinstance(entry.get("photo"), str):
            photo = (source / entry["photo"]).resolve()
            if packed is not None:
                entry["photo"] = free_name(photo, target, packed)
                packed[entry["photo"]] = photo
            elif photo.is_relative_to(target):
                entry["photo"] = photo.relative_to(target).as_posix()
            else:
                stop(words()["merge"]["photo_far"].format(photo=os.path.relpath(photo)), 2)
        _move_photos(entry, source, target, packed)


def _ask(contradiction: Contradiction) -> int | None:
    """Which line holds, asked in the terminal; leaves with 2 when the person stops."""
    from inspector.knowledge.wording import words

    merge_words = words()["merge"]
    click.echo(merge_words["contradiction"].format(what=contradiction.what))
    for number, line in enumerate(contradiction.lines, 1):
        click.echo("  " + merge_words["number"].format(number=number, line=line))
    while True:
        try:
            typed = input(merge_words["ask"]).strip().lower()
        except (EOFError, KeyboardInterrupt):
            typed = "q"
        if typed in ("1", "2"):
            return int(typed) - 1
        if typed in ("q", "quit"):
            stop(merge_words["stopped"], 2)
        click.echo(merge_words["again"])


def _report(result: Merged) -> None:
    from inspector.knowledge.wording import words

    merge_words = words()["merge"]
    for one in result.contradictions:
        click.echo(merge_words["contradiction"].format(what=one.what), err=True)
        for line in one.lines:
            click.echo(f"  {line}", err=True)
    number = len(result.contradictions)
    stop(merge_words["unsettled_one" if number == 1 else "unsettled"].format(number=number), 2)


def _write(result: Merged, out: Path, known: Knowledge, copies: dict[str, Path]) -> None:
    """Write the merged record after the reader has accepted it, the photos of a zip before it. Raises Faults."""
    from inspector.knowledge.yamlfile import parse
    from inspector.noting.photo_beside import copy_photos
    from inspector.noting.plain_record import record_yaml
    from inspector.noting.table_rows import head_rows, look_rows, write_table
    from inspector.reading.addresses import Addresses
    from inspector.reading.record import read_document
    from inspector.reading.table import is_table
    from inspector.reporting.files import write_whole

    try:
        copy_photos(copies, out.parent)
    except OSError as error:
        stop(f"{out.parent / 'photos'}: cannot be written: {error.strerror or error}", 2)
    text = record_yaml(result.data)
    inspection = read_document(parse(text, str(out), keep_faults=True), out.parent, known, date.today())
    if is_table(out):
        rows = look_rows(result.data, Addresses(known, known.machines[inspection.kind]))
        write(out, lambda path: write_table(path, head_rows(result.data), rows))
    else:
        write(out, lambda path: write_whole(path, text.encode()))
