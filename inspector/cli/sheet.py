"""`inspector sheet`: the blank sheet as PDF, and the page for the phone."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inspector.cli.common import loaded_knowledge, refuse_targets, stop, write

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

_MANY = 300  # looks
_FILE = click.Path(path_type=Path)


@click.command("sheet")
@click.option("--machine", "kind", required=True, metavar="KIND", help="Such as `shaft drive motorcycle`.")
@click.option("--for", "purpose", required=True, metavar="PURPOSE", help="Such as `before purchase`.")
@click.option("--depth", default="core", help="core (the looks that matter most), short, or full. Default: core.")
@click.option("--work", multiple=True, metavar="WORK", help="What was done, such as `brake pads @ front`.")
@click.option("--out", "pdf_file", type=_FILE, metavar="FILE", help="Write the sheet as PDF. Default: sheet.pdf.")
@click.option("--html", "html_file", type=_FILE, metavar="FILE", help="Write the page for a phone instead.")
def command(
    kind: str, purpose: str, depth: str, work: tuple[str, ...], pdf_file: Path | None, html_file: Path | None
) -> None:
    """Write a blank sheet to print or to fill in on a screen, or a page for a phone without network.

    What comes back is judged as it is: `inspector assess` takes the filled PDF and the zip that the page saves.

    Example: inspector sheet --machine "shaft drive motorcycle" --for "before purchase" --html page.html
    """
    from inspector.knowledge.walk_round import DEPTHS, PURPOSES
    from inspector.reporting.sheet_plan import make_plan

    known = loaded_knowledge()
    if pdf_file is None and html_file is None:
        pdf_file = Path("sheet.pdf")
    refuse_targets(Path(), pdf_file, html_file)
    machine = _machine(known, kind)
    plan = make_plan(
        known,
        machine,
        _one_of("the purpose", purpose, PURPOSES),
        _one_of("the depth", depth, DEPTHS),
        tuple(_work(known, machine, one) for one in work),
    )
    if pdf_file is not None:
        from inspector.reporting.sheet_paper import write_sheet

        if len(plan.questions) > _MANY:
            click.echo(f"Drawing {len(plan.questions)} looks; this takes half a minute or more.", err=True)

        write(pdf_file, lambda target: write_sheet(plan, known, target))
    if html_file is not None:
        from inspector.reporting.sheet_page import write_page

        write(html_file, lambda target: write_page(plan, known, target))


def _one_of(what: str, given: str, allowed: tuple[Any, ...]) -> Any:
    from inspector.knowledge.faults import not_allowed
    from inspector.reading.addresses import plain

    found = plain(given.replace("-", " "))
    if found not in allowed:
        stop(not_allowed(what, given, allowed), 2)
    return found


def _machine(known: Knowledge, given: str) -> str:
    from inspector.reading.addresses import plain

    called = {entry.called: kind for kind, entry in known.machines.items() if not entry.abstract}
    by_name = {plain(name): kind for text, kind in called.items() for name in (text, kind)}
    wanted = plain(given.replace("-", " "))
    return by_name[wanted] if wanted in by_name else called[_one_of("the machine kind", given, tuple(called))]


def _work(known: Knowledge, machine: str, given: str) -> tuple[str, str]:
    from inspector.reading.addresses import Addresses, UnknownAddress

    try:
        return Addresses(known, known.machines[machine]).work(given)
    except UnknownAddress as error:
        stop(str(error), 2)
