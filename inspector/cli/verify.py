"""`inspector verify`: a report read back, its record judged again, and what differs said."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inspector.cli.common import input_faults, loaded_knowledge, stop, width

if TYPE_CHECKING:
    from inspector.cli.judging import Priced
    from inspector.knowledge.library import Knowledge
    from inspector.reporting.carried import Carried
    from inspector.reporting.read_back import ReadBack


@click.command("verify")
@click.argument("report", type=click.Path(path_type=Path))
@click.argument("record", type=click.Path(path_type=Path), required=False)
def command(report: Path, record: Path | None) -> None:
    """Take the record out of the PDF REPORT, judge it again with the rules at hand and say what differs.

    With RECORD also whether that file is still the one the report was made from. Exit status: 0 the same, 1
    something differs or was altered, 2 the report cannot be read, 3 the tool failed.

    Example: inspector verify report.pdf my_bike.yaml
    """
    from inspector.reporting.verify_text import checks_text, differences_text

    found = _read(report)
    known = loaded_knowledge()
    lines, sound = checks_text(found, _at_hand(record), record.name if record else "", width())
    click.echo("\n".join(lines))
    lines, same = differences_text(found.carried, _judged_again(found.carried, known, report), width())
    click.echo("\n".join(lines))
    raise SystemExit(0 if sound and same else 1)


def _read(report: Path) -> ReadBack:
    from inspector.reporting.read_back import Unreadable, read_back

    try:
        return read_back(report)
    except Unreadable as error:
        stop(f"{report}: {error}", 2)
    except OSError as error:
        stop(f"{report}: this file cannot be read: {error.strerror or error}", 2)


def _at_hand(record: Path | None) -> str | None:
    from inspector.reading.record_text import record_text

    if record is None:
        return None
    with input_faults():
        text = record_text(record)
    return text if text is not None else stop(f"{record}: there is no such file", 2)


def _judged_again(carried: Carried, known: Knowledge, report: Path) -> dict[str, Any]:
    from inspector.cli.judging import judged
    from inspector.knowledge.wording import words
    from inspector.reading.record_text import read_text
    from inspector.reporting.carried import plain_results

    name = f"{report.name}/{carried.record.name}"
    with input_faults(words()["verify"]["record_unread"]):
        inspection = read_text(carried.record.text, name, known)
        prices = _prices(carried, report, known)
    return plain_results(judged(inspection, known, prices))


def _prices(carried: Carried, report: Path, known: Knowledge) -> Priced | None:
    from datetime import date

    from inspector.cli.judging import Priced
    from inspector.reading.prices import read_price_text

    inside = carried.prices
    if inside is None:
        return None
    name = f"{report.name}/{inside.name}"
    return Priced(read_price_text(inside.text, name, known, date.today()), inside.name, inside.text)
