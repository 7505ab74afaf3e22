"""`inspector table`: a record as a table for a spreadsheet, or an empty one with every question."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inspector.cli.common import input_faults, loaded_knowledge, refuse_targets, stop, write

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

_DEPTHS = ("core", "short", "full")


@click.command("table")
@click.argument("record", required=False, type=click.Path(path_type=Path))
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--template", type=click.Path(path_type=Path), metavar="FILE", help="Write an empty table to FILE.")
@click.option("--machine", "kind", metavar="KIND", help="For --template: the machine kind.")
@click.option("--for", "purpose", metavar="PURPOSE", help="For --template: why you look at it.")
@click.option("--depth", type=click.Choice(_DEPTHS), default="full", show_default=True, help="For --template.")
def command(
    record: Path | None,
    file: Path | None,
    template: Path | None,
    kind: str | None,
    purpose: str | None,
    depth: str,
) -> None:
    """Write RECORD as a table to FILE, or an empty table with --template. The name ends in .csv or .xlsx.

    A filled table is read by `inspector assess` like a record.

    Example: inspector table --template looks.xlsx --machine "chain drive motorcycle" --for handover
    """
    known = loaded_knowledge()
    if template is not None:
        if record is not None or kind is None or purpose is None:
            stop("--template needs --machine and --for, and no record beside it", 2)
        _template(template, kind, purpose, depth, known)
    elif record is None or file is None or kind or purpose:
        stop("Name the record and the table to write, or use --template. More: inspector table --help", 2)
    else:
        _convert(record, file, known)


def _template(target: Path, kind: str, purpose: str, depth: str, known: Knowledge) -> None:
    from inspector.knowledge.walk_round import questions
    from inspector.noting.table_rows import question_rows, write_table
    from inspector.reading.values import NotAValue
    from inspector.reading.visit import machine_kind, visit_purpose

    refuse_targets(target.with_name(target.name + "."), target)
    try:
        machine, why = machine_kind(kind, known), visit_purpose(purpose)
    except NotAValue as error:
        stop(str(error), 2)
    head = [
        ("machine: kind", known.machines[machine].called),
        ("machine: odometer", ""),
        ("machine: year", ""),
        ("inspection: purpose", why),
        ("inspection: date", date.today().isoformat()),
        ("inspection: country", ""),
        *([("work done", "")] if why == "after own service" else []),
        ("remarks", ""),
    ]
    asked = questions(known, machine, why, depth)  # type: ignore[arg-type]
    with input_faults():
        write(target, lambda path: write_table(path, head, question_rows(asked, known)))


def _convert(record: Path, target: Path, known: Knowledge) -> None:
    from inspector.noting.table_rows import head_rows, look_rows, write_table
    from inspector.reading.addresses import Addresses
    from inspector.reading.opening import is_zip, opened_document
    from inspector.reading.record import read_document

    refuse_targets(record, target)
    with input_faults(), opened_document(record) as (document, folder):
        inspection = read_document(document, folder, known, date.today())
        rows = look_rows(document.data, Addresses(known, known.machines[inspection.kind]))
        write(target, lambda path: write_table(path, head_rows(document.data), rows))
    elsewhere = record.resolve().parent != target.resolve().parent or is_zip(record)
    if elsewhere and any("photo" in row for row in rows):
        place = record if is_zip(record) else record.parent
        click.echo(f"The photos lie in {place}; a table finds them only in its own folder.", err=True)
