"""`inspector rules`: the rules as they are judged by."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inspector.cli.common import UNUSABLE, chosen, input_faults, loaded_knowledge, stop, unwritable, width, write

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

_PAPERS = ("a4", "letter")
_BOOK = "book"


@click.command("rules")
@click.argument("rule_id", required=False, metavar="[ID | book]")
@click.argument("book_file", required=False, type=click.Path(path_type=Path), metavar="[FILE.pdf]")
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
@click.option(
    "--paper", type=click.Choice(_PAPERS), default="a4", help="Size of the paper of the book. Default: a4."
)
def command(rule_id: str | None, book_file: Path | None, as_json: bool, paper: str) -> None:
    """List the rules, show the rule ID with its class, story, sources and examples, or print them all as a book.

    Refuses to go on, with file, line and reason, when any rule breaks a condition of the format or the engine.

    Example: inspector rules brakes/pad_below_limit

    Example: inspector rules book rulebook.pdf
    """
    from inspector.reporting.knowledge_text import rule_list, rule_text

    if rule_id == _BOOK:
        _book(book_file, paper)
        return
    if book_file is not None:
        stop(f"{book_file}: only `inspector rules {_BOOK} FILE.pdf` writes a file", 2)
    known = _checked_knowledge()
    wanted = chosen(rule_id, known.rules, "the rule")
    if as_json:
        data = {name: entry.model_dump(mode="json", by_alias=True) for name, entry in wanted.items()}
        click.echo(json.dumps(data if rule_id is None else data[next(iter(data))], ensure_ascii=False, indent=1))
    elif rule_id is None:
        click.echo(rule_list(known, width()))
    else:
        click.echo(rule_text(next(iter(wanted.values())), known, width()))


def _checked_knowledge() -> Knowledge:
    """The knowledge, checked for the engine, too, and for every machine kind; judging checks its own kind."""
    from inspector.judging.engine_limits import check_engine

    known = loaded_knowledge()
    with input_faults(UNUSABLE):
        check_engine(known)
    return known


def _book(book_file: Path | None, paper: str) -> None:
    import time
    from datetime import date

    from inspector.knowledge.wording import words
    from inspector.reporting.rulebook import write_rulebook

    if book_file is None:
        stop(f"Name the file: inspector rules {_BOOK} rulebook.pdf", 2)
    known, pages = _checked_knowledge(), []
    reason = unwritable(book_file)
    if reason is not None:
        stop(f"{book_file}: {reason}", 2)
    start = time.monotonic()
    write(book_file, lambda target: pages.append(write_rulebook(known, target, date.today(), paper)))
    seconds = round(time.monotonic() - start)
    click.echo(words()["rulebook"]["written"].format(pages=pages[0], rules=len(known.rules), seconds=seconds))
