"""What the commands share: knowledge loaded, faults printed, files written, the width of the terminal."""

from __future__ import annotations

import gc
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

UNUSABLE = "The knowledge in rules/ cannot be used:"


def loaded_knowledge() -> Knowledge:
    """The knowledge, checked; exits with 2 and every fault when it cannot be used."""
    from inspector.knowledge.library import knowledge

    with input_faults(UNUSABLE):
        known = knowledge()
    gc.freeze()  # it lives as long as the process; looking through it for garbage takes longer than judging
    return known


def chosen(wanted: str | None, table: Any, what: str) -> Any:
    """The whole table, or the one entry that is wanted; exits with 2 when there is no such entry."""
    from inspector.knowledge.faults import not_allowed

    if wanted is None:
        return table
    if wanted not in table:
        stop(not_allowed(what, wanted, table), 2)
    return {wanted: table[wanted]}


class input_faults:  # noqa: N801  reads as a statement
    """Print every fault of the input and exit with 2."""

    def __init__(self, heading: str | None = None) -> None:
        self.heading = heading

    def __enter__(self) -> None:
        """Nothing to prepare."""

    def __exit__(self, kind: object, error: BaseException | None, trace: object) -> None:
        from inspector.knowledge.faults import Faults

        if isinstance(error, Faults):
            stop("\n".join([*([self.heading] if self.heading else []), *map(str, error.faults)]), 2)


def stop(message: str, status: int) -> NoReturn:
    """Print a message and leave with a status."""
    click.echo(message, err=True)
    raise SystemExit(status)


def refuse_targets(record: Path, *targets: Path | None) -> None:
    """Stop before anything is judged when a report could not be written afterwards."""
    wanted = [target for target in targets if target is not None]
    for target in wanted:
        reason = unwritable(target, record)
        if reason is not None:
            stop(f"{target}: {reason}", 2)
    if len({target.resolve() for target in wanted}) < len(wanted):
        stop(f"{wanted[0]}: two reports cannot be one file; give them different names", 2)


def unwritable(target: Path, record: Path | None = None) -> str | None:
    """Why no file can be written there, as far as it can be told before."""
    try:
        if target.is_dir():
            return "this is a folder; add a name for the file"
        if not target.parent.is_dir():
            return f"there is no folder {target.parent}; make it first"
        if record is not None and target.exists() and record.exists() and target.samefile(record):
            return "this is the record itself; give the report another name"
    except (OSError, RuntimeError):
        return "this is no usable file name"
    return None


def write(target: Path, writer: Any) -> None:
    """Call the writer; exits with 2 when the file cannot be written."""
    try:
        writer(target)
    except OSError as error:
        stop(f"{target}: cannot be written: {error.strerror or error}", 2)
    click.echo(f"Written: {target}", err=True)


def width() -> int:
    """Columns of the terminal, within what reads well."""
    import shutil

    return max(40, min(shutil.get_terminal_size((88, 24)).columns, 120))
