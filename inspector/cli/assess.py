"""`inspector assess`: from a record to a verdict, and to a report when one is asked for."""

from __future__ import annotations

from pathlib import Path

import click

from inspector.cli.common import input_faults, loaded_knowledge, refuse_targets, stop, width, write

_READERS = ("buyer", "owner", "mechanic")
_LEVELS = ("stop", "repair", "plan", "watch")
_READER_OF = {"before purchase": "buyer", "after own service": "owner", "handover": "mechanic"}


@click.command("assess")
@click.argument("record", type=click.Path(path_type=Path))
@click.option(
    "--pdf", "pdf_file", type=click.Path(path_type=Path), metavar="FILE", help="Write the report as PDF."
)
@click.option(
    "--json", "json_file", type=click.Path(path_type=Path), metavar="FILE", help="Write everything as JSON."
)
@click.option(
    "--for", "reader", type=click.Choice(_READERS), help="Who reads it. Default: from the record's purpose."
)
@click.option(
    "--fail-at", type=click.Choice(_LEVELS), help="Exit with 1 when a finding is at this level or above."
)
def command(
    record: Path, pdf_file: Path | None, json_file: Path | None, reader: str | None, fail_at: str | None
) -> None:
    """Read RECORD (YAML or JSON), judge it, print the verdict and the findings.

    Example: inspector assess my_bike.yaml --pdf report.pdf --for mechanic
    """
    from inspector.deriving.facts import derive_facts
    from inspector.judging.engine import RuleError
    from inspector.judging.judge import judge
    from inspector.reading.record import read_record
    from inspector.reporting.text import to_text
    from inspector.weighing.weigh import weigh

    known = loaded_knowledge()
    refuse_targets(record, pdf_file, json_file)
    with input_faults():
        inspection = read_record(record, known)
    try:
        assessment = weigh(judge(derive_facts(inspection, known), known), known)
    except RuleError as error:
        stop(f"The rule engine failed; this is a fault of the tool, not of your record. {error}", 3)
    who = reader or _READER_OF[inspection.purpose]
    click.echo(to_text(assessment, who, width()))
    if json_file is not None:
        from inspector.reporting.jsonfile import write_json

        write(json_file, lambda target: write_json(assessment, target))
    if pdf_file is not None:
        from inspector.reporting.pdf import write_pdf

        write(pdf_file, lambda target: write_pdf(assessment, who, target, record.parent))
    if fail_at is not None:
        levels = {entry.level for entry in (*assessment.findings, *assessment.causes)}
        if levels & set(_LEVELS[: _LEVELS.index(fail_at) + 1]):
            raise SystemExit(1)
