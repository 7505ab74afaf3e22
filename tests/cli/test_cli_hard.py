"""Terminals and file names that are out of the common: signs two columns wide, old encodings, hopeless targets."""

from __future__ import annotations

import os
import subprocess
import sys
import unicodedata
from pathlib import Path

import pytest
from click.testing import CliRunner

from inspector.cli import cli
from inspector.knowledge.faults import Fault, Faults

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "samples" / "nearly_empty" / "record.yaml"


def columns(line: str) -> int:
    wide = sum(unicodedata.east_asian_width(c) in "WF" for c in line)
    return len(line) + wide - sum(unicodedata.category(c) in ("Mn", "Me", "Cf") for c in line)


@pytest.mark.parametrize("width", [40, 61, 120])
@pytest.mark.parametrize(
    "note", ["轮胎磨损很厉害" * 60, "🏍️😀" * 150, "short 轮胎 words 磨损 mixed " * 30, "e\u0301" * 300]
)
def test_signs_that_take_two_columns_keep_within_the_width(
    tmp_path: Path, note: str, width: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    path = tmp_path / "record.yaml"
    path.write_text(
        f'machine: {{kind: shaft_drive, name: "{note}"}}\n'
        "inspection: {purpose: handover, date: 2026-05-01}\n"
        f'observations:\n  brake caliper @ front left: {{drag: "not checked: {note}"}}\n'
    )
    result = CliRunner().invoke(cli, ["assess", str(path)], catch_exceptions=False)
    assert result.exit_code == 0
    assert max(map(columns, result.stdout.splitlines())) <= width
    assert "".join(note.split()) in "".join(result.stdout.split())


@pytest.mark.parametrize("encoding", ["latin-1", "ascii", "cp1252", "utf-8"])
def test_a_terminal_that_lacks_a_sign_still_gets_its_text(encoding: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "inspector", "assess", str(SAMPLE)],
        cwd=ROOT,
        env={**os.environ, "PYTHONIOENCODING": encoding},
        capture_output=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr.decode(encoding, "replace")[-300:]
    assert b"manual, local law" in b" ".join(done.stdout.split())


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--json", "a" * 300 + ".json"], "no usable file name"),
        (["--json", "missing/a.json"], "there is no folder"),
        (["--json", "."], "this is a folder"),
        (["--json", "same", "--pdf", "./same"], "two reports cannot be one file"),
        (["--pdf", "missing/a.pdf"], "there is no folder"),
    ],
)
def test_a_report_that_cannot_be_written_is_refused_before_anything_is_judged(
    tmp_path: Path, options: list[str], words: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(cli, ["assess", str(SAMPLE), *options], catch_exceptions=False)
    assert result.exit_code == 2
    assert words in result.stderr
    assert not result.stdout
    assert not list(tmp_path.iterdir())


def test_rules_beyond_the_engine_are_named_and_nothing_is_judged(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(knowledge: object, kind: str) -> None:
        raise Faults([Fault("rules/findings/brakes/wide.yaml", 1, 1, "gathers 17 members; the engine joins 16")])

    monkeypatch.setattr("inspector.judging.judge.engines_for", refuse)
    result = CliRunner().invoke(cli, ["assess", str(SAMPLE)])

    assert (result.exit_code, result.stdout) == (2, "")
    assert "The knowledge in rules/ cannot be used:" in result.stderr
    assert "rules/findings/brakes/wide.yaml:1:1: gathers 17 members" in result.stderr
