"""The command line: arguments in, the steps called, words out. No judgement and no arithmetic here.

Each command is a module of its own and is loaded only when it is called.
Exit status: 0 assessed, 1 a finding is at or above --fail-at, 2 the input cannot be used, 3 the tool failed.
"""

from __future__ import annotations

import sys
from importlib import import_module
from io import TextIOWrapper

import click

# command -> (module, what it does in one line: shown without loading the module)
_COMMANDS = {
    "assess": ("assess", "Read a record, judge it, print the verdict and the findings."),
    "verify": ("verify", "Read a report back, judge its record again, say what differs."),
    "ask": ("ask", "Ask the questions one by one and save each answer to the record."),
    "sheet": ("sheet", "Write a blank sheet to fill in, or a page for a phone without network."),
    "table": ("table", "Write a record as a table for a spreadsheet, or an empty one to fill in."),
    "merge": ("merge", "Make one record of two part records; contradictions are asked about."),
    "rules": ("rules", "List the rules, show one in full, or print them all as a book."),
    "observable": ("observable", "Show what can be recorded: how to look, units, choices, tools."),
    "schema": ("schema", "Print the JSON Schema of a record, for editors."),
}


class _Commands(click.Group):
    """Commands found by name in the table above."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Every command in the order of the table."""
        return list(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Load one command. None when there is no such command."""
        if cmd_name not in _COMMANDS:
            return None
        command = import_module(f"inspector.cli.{_COMMANDS[cmd_name][0]}").command
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without loading any."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in _COMMANDS.items()])


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


@click.command(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(_version(), message="inspector %(version)s")
def cli() -> None:
    """Judge what you saw on a motorcycle: findings with limits and sources, what to do, what was not seen.

    Example: inspector assess samples/before_purchase/record.yaml --pdf report.pdf
    """
