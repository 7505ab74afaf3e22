"""`inspector schema`: the JSON Schema of a record, or of what comes out."""

from __future__ import annotations

import json

import click

from inspector.cli.common import loaded_knowledge


@click.command("schema")
@click.option("--assessment", is_flag=True, help="The schema of what `inspector assess --json` writes.")
def command(assessment: bool) -> None:
    """Print the JSON Schema of a record, for editors that check and complete what you type.

    Example: inspector schema > record.schema.json
    """
    if assessment:
        from inspector.reporting.jsonfile import assessment_schema

        schema = assessment_schema()
    else:
        from inspector.reading.schema import record_schema

        schema = record_schema(loaded_knowledge())
    click.echo(json.dumps(schema, ensure_ascii=False, indent=1))
