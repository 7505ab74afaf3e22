"""`inspector rules`: the rules as they are judged by."""

from __future__ import annotations

import json

import click

from inspector.cli.common import chosen, loaded_knowledge, width


@click.command("rules")
@click.argument("rule_id", required=False, metavar="[ID]")
@click.option("--json", "as_json", is_flag=True, help="Print as JSON.")
def command(rule_id: str | None, as_json: bool) -> None:
    """List the rules, or show the rule ID with its class, story, grounds, sources and examples.

    Refuses to go on, with file, line and reason, when any rule breaks a condition of the format or the engine.

    Example: inspector rules brakes/pad_below_limit
    """
    from inspector.reporting.knowledge_text import rule_list, rule_text

    known = loaded_knowledge()
    wanted = chosen(rule_id, known.rules, "the rule")
    if as_json:
        data = {name: entry.model_dump(mode="json", by_alias=True) for name, entry in wanted.items()}
        click.echo(json.dumps(data if rule_id is None else data[next(iter(data))], ensure_ascii=False, indent=1))
    elif rule_id is None:
        click.echo(rule_list(known, width()))
    else:
        click.echo(rule_text(next(iter(wanted.values())), known, width()))
