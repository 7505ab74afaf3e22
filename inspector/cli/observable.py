"""`inspector observable`: what can be recorded, and how to look."""

from __future__ import annotations

import json

import click

from inspector.cli.common import chosen, loaded_knowledge, width


@click.command("observable")
@click.argument("part", required=False)
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
def command(part: str | None, as_json: bool) -> None:
    """Show what can be recorded, of all parts or of one PART: how to look, units, choices, tools.

    Example: inspector observable "brake pad"
    """
    from inspector.reporting.knowledge_text import part_list, part_text

    known = loaded_knowledge()
    wanted = " ".join(part.lower().replace("_", " ").split()) if part else None
    found = chosen(wanted, known.properties, "the part")
    if as_json:
        data = {
            name: {key: entry.model_dump(mode="json", exclude_defaults=True) for key, entry in entries.items()}
            for name, entries in found.items()
        }
        click.echo(json.dumps(data, ensure_ascii=False, indent=1))
    elif wanted is None:
        click.echo(part_list(known, width()))
    else:
        click.echo(part_text(wanted, known, width()))
