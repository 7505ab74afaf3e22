"""`inspector schema`: the record's JSON Schema."""

from __future__ import annotations

import json

import click

from inspector.cli.common import loaded_knowledge


@click.command("schema")
def command() -> None:
    """Print the JSON Schema of a record, for editors that check and complete what you type.

    Example: inspector schema > record.schema.json
    """
    from inspector.reading.schema import record_schema

    click.echo(json.dumps(record_schema(loaded_knowledge()), ensure_ascii=False, indent=1))
