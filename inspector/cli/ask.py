"""`inspector ask`: the questions one by one in a terminal, each answer saved to the record at once."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inspector.cli.common import input_faults, loaded_knowledge, stop, unwritable, width

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge
    from inspector.noting.record_file import RecordFile

_DEPTHS = ("core", "short", "full")


@click.command("ask")
@click.argument("record", type=click.Path(path_type=Path))
@click.option("--machine", "kind", metavar="KIND", help="What kind it is, such as `chain drive motorcycle`.")
@click.option("--for", "purpose", metavar="PURPOSE", help="`before purchase`, `after own service` or `handover`.")
@click.option("--depth", type=click.Choice(_DEPTHS), default="short", show_default=True, help="How much is asked.")
def command(record: Path, kind: str | None, purpose: str | None, depth: str) -> None:
    """Ask about the machine in the order of a walk round it, and save each answer to RECORD (YAML or JSON).

    A record that exists is gone on with at its first open question; its comments stay. After an answer,
    `note: words` and `photo: file` belong to it.

    Example: inspector ask my_bike.yaml --machine "shaft drive motorcycle" --for "before purchase" --depth core
    """
    from inspector.noting.interview import Interview, closing
    from inspector.noting.record_file import RecordFile
    from inspector.noting.session import Session

    known = loaded_knowledge()
    if record.suffix.lower() in (".csv", ".xlsx", ".pdf", ".zip"):
        other = record.with_suffix(".yaml")
        text = (
            f"answers are saved to a YAML or JSON record; name one such as `{other}`, and merge the two at the end"
        )
        stop(f"{record}: {text}", 2)
    file = RecordFile(record, known, date.today())
    try:
        _opened(file, known, kind, purpose)
        with contextlib.suppress(ImportError):
            import readline  # noqa: F401  the arrow keys edit a line
        session = Session(file, depth)  # type: ignore[arg-type]
        with input_faults():
            Interview(session, _say, input, width()).run()
    except OSError as error:
        stop(f"{record}: cannot be written: {error.strerror or error}", 2)
    again = f'inspector ask "{record}" --depth {depth}'
    _say(closing(session, again, f'inspector assess "{record}"', width()))


def _say(lines: Iterable[str]) -> None:
    for line in lines:
        click.echo(line)


def _opened(file: RecordFile, known: Knowledge, kind: str | None, purpose: str | None) -> None:
    """Read the record that exists, or make a new one once its kind and purpose are known."""
    from inspector.knowledge.walk_round import PURPOSES
    from inspector.knowledge.wording import words
    from inspector.reading.values import NotAValue
    from inspector.reading.visit import machine_kind, machine_kinds, visit_purpose

    try:
        wanted = machine_kind(kind, known) if kind is not None else None
        reason = visit_purpose(purpose) if purpose is not None else None
    except NotAValue as error:
        stop(str(error), 2)
    if file.path.exists() and file.path.stat().st_size:
        with input_faults():
            file.read()
        now = file.inspection
        for given, held in ((wanted, now.kind), (reason, now.purpose)):
            if given is not None and given != held:
                stop(f"{file.path}: the record is about `{held}`, not `{given}`; use another file for that", 2)
        return
    problem = unwritable(file.path)
    if problem is not None:
        stop(f"{file.path}: {problem}", 2)
    ask = words()["ask"]
    wanted = wanted or machine_kind(_pick(ask["kind"], list(machine_kinds(known))), known)
    reason = reason or visit_purpose(_pick(ask["purpose"], list(PURPOSES)))
    with input_faults():
        file.create(wanted, reason)


def _pick(question: str, choices: list[str]) -> str:
    """One of several words, by word or number; leaves with 2 when the input ends."""
    from inspector.knowledge.faults import not_allowed
    from inspector.noting.answers import clean

    _say([question, *(f"  {number} {choice}" for number, choice in enumerate(choices, 1))])
    while True:
        try:
            text = clean(input("> "))
        except (EOFError, KeyboardInterrupt):
            stop("\nNothing was written: the kind of machine and the purpose must be known first.", 2)
        if text.isdigit() and 1 <= int(text) <= len(choices):
            return choices[int(text) - 1]
        if text.lower() in choices:
            return text.lower()
        _say([not_allowed("the answer", text, choices)])
