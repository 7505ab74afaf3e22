"""The command line: arguments in, the steps called, words out. No judgement and no arithmetic here.

Exit status: 0 assessed, 1 a finding is at or above --fail-at, 2 the input cannot be used, 3 the tool failed.
"""

from __future__ import annotations

import json
import sys
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

_READERS = ("buyer", "owner", "mechanic")
_LEVELS = ("stop", "repair", "plan", "watch")
_READER_OF = {"before purchase": "buyer", "after own service": "owner", "handover": "mechanic"}


def _version() -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("inspector")
    except PackageNotFoundError:  # run from a clone that was never installed
        return "from a clone"


def main() -> None:
    """Entry point of the command `inspector`."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that lacks a sign shows `?` in its place
    cli(prog_name="inspector")


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(_version(), message="inspector %(version)s")
def cli() -> None:
    """Judge what you saw on a motorcycle: findings with limits and sources, what to do, what was not seen.

    Example: inspector assess samples/before_purchase/record.yaml --pdf report.pdf
    """


@cli.command()
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
def assess(
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

    known = _knowledge()
    _refuse_targets(record, pdf_file, json_file)
    with _input_faults():
        inspection = read_record(record, known)
    try:
        assessment = weigh(judge(derive_facts(inspection, known), known), known)
    except RuleError as error:
        _stop(f"The rule engine failed; this is a fault of the tool, not of your record. {error}", 3)
    who = reader or _READER_OF[inspection.purpose]
    click.echo(to_text(assessment, who, _width()))
    if json_file is not None:
        from inspector.reporting.jsonfile import write_json

        _write(json_file, lambda target: write_json(assessment, target))
    if pdf_file is not None:
        from inspector.reporting.pdf import write_pdf

        _write(pdf_file, lambda target: write_pdf(assessment, who, target, record.parent))
    if fail_at is not None:
        levels = {entry.level for entry in (*assessment.findings, *assessment.causes)}
        if levels & set(_LEVELS[: _LEVELS.index(fail_at) + 1]):
            raise SystemExit(1)


@cli.command()
@click.argument("rule_id", required=False, metavar="[ID]")
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
def rules(rule_id: str | None, as_json: bool) -> None:
    """List the rules, or show the rule ID with its class, story, grounds, sources and examples.

    Refuses to go on, with file, line and reason, when any rule breaks a condition of the format or the engine.

    Example: inspector rules brakes/pad_below_limit
    """
    from inspector.reporting.knowledge_text import rule_list, rule_text

    known = _knowledge()
    chosen = _chosen(rule_id, known.rules, "the rule")
    if as_json:
        data = {name: entry.model_dump(mode="json", by_alias=True) for name, entry in chosen.items()}
        click.echo(json.dumps(data if rule_id is None else data[next(iter(data))], ensure_ascii=False, indent=1))
    elif rule_id is None:
        click.echo(rule_list(known, _width()))
    else:
        click.echo(rule_text(next(iter(chosen.values())), known, _width()))


@cli.command()
@click.argument("part", required=False)
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
def observable(part: str | None, as_json: bool) -> None:
    """Show what can be recorded, of all parts or of one PART: how to look, units, choices, tools.

    Example: inspector observable "brake pad"
    """
    from inspector.reporting.knowledge_text import part_list, part_text

    known = _knowledge()
    wanted = " ".join(part.lower().replace("_", " ").split()) if part else None
    chosen = _chosen(wanted, known.properties, "the part")
    if as_json:
        data = {
            name: {key: entry.model_dump(mode="json", exclude_defaults=True) for key, entry in entries.items()}
            for name, entries in chosen.items()
        }
        click.echo(json.dumps(data, ensure_ascii=False, indent=1))
    elif wanted is None:
        click.echo(part_list(known, _width()))
    else:
        click.echo(part_text(wanted, known, _width()))


@cli.command()
def schema() -> None:
    """Print the JSON Schema of a record, for editors that check and complete what you type.

    Example: inspector schema > record.schema.json
    """
    from inspector.reading.schema import record_schema

    click.echo(json.dumps(record_schema(_knowledge()), ensure_ascii=False, indent=1))


def _knowledge() -> Knowledge:
    from inspector.judging.engine_limits import check_engine
    from inspector.knowledge.library import knowledge

    with _input_faults("The knowledge in rules/ cannot be used:"):
        known = knowledge()
        check_engine(known)
    return known


def _chosen(wanted: str | None, table: Any, what: str) -> Any:
    from inspector.knowledge.faults import not_allowed

    if wanted is None:
        return table
    if wanted not in table:
        _stop(not_allowed(what, wanted, table), 2)
    return {wanted: table[wanted]}


class _input_faults:  # noqa: N801  reads as a statement
    """Print every fault of the input and exit with 2."""

    def __init__(self, heading: str | None = None) -> None:
        self.heading = heading

    def __enter__(self) -> None:
        """Nothing to prepare."""

    def __exit__(self, kind: object, error: BaseException | None, trace: object) -> None:
        from inspector.knowledge.faults import Faults

        if isinstance(error, Faults):
            _stop("\n".join([*([self.heading] if self.heading else []), *map(str, error.faults)]), 2)


def _stop(message: str, status: int) -> NoReturn:
    click.echo(message, err=True)
    raise SystemExit(status)


def _refuse_targets(record: Path, *targets: Path | None) -> None:
    """Stop before anything is judged when a report could not be written afterwards."""
    wanted = [target for target in targets if target is not None]
    for target in wanted:
        reason = _unwritable(target, record)
        if reason is not None:
            _stop(f"{target}: {reason}", 2)
    if len({target.resolve() for target in wanted}) < len(wanted):
        _stop(f"{wanted[0]}: two reports cannot be one file; give them different names", 2)


def _unwritable(target: Path, record: Path) -> str | None:
    try:
        if target.is_dir():
            return "this is a folder; add a name for the file"
        if not target.parent.is_dir():
            return f"there is no folder {target.parent}; make it first"
        if target.exists() and record.exists() and target.samefile(record):
            return "this is the record itself; give the report another name"
    except (OSError, RuntimeError):
        return "this is no usable file name"
    return None


def _write(target: Path, write: Any) -> None:
    try:
        write(target)
    except OSError as error:
        _stop(f"{target}: cannot be written: {error.strerror or error}", 2)
    click.echo(f"Written: {target}", err=True)


def _width() -> int:
    import shutil

    return max(40, min(shutil.get_terminal_size((88, 24)).columns, 120))
