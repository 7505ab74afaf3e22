"""The text of a record for judging it again: the file's own, that of a zip, and none of a pipe."""

from __future__ import annotations

import os
import threading
import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from inspector.cli import cli
from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.reading.opening import opened_record
from inspector.reading.record_text import read_text, record_text

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*/record.yaml"))
SMALL = """\
machine: {kind: shaft drive motorcycle}
inspection: {purpose: before purchase, date: 2026-05-01}
observations:
  tyre @ front: {cracks: none}
"""


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_the_text_gives_the_same_inspection_as_the_file(sample: Path) -> None:
    text = record_text(sample)
    assert text == sample.read_text(encoding="utf-8")
    with opened_record(sample, knowledge()) as (inspection, _):
        assert read_text(text, "again", knowledge()) == inspection


def test_of_a_zip_the_record_in_it_is_taken_and_the_report_can_be_verified(tmp_path: Path) -> None:
    archive = tmp_path / "record.zip"
    with zipfile.ZipFile(archive, "w") as file:
        file.writestr("record.yaml", SMALL)
    report = tmp_path / "report.pdf"

    assert record_text(archive) == SMALL
    assert CliRunner().invoke(cli, ["assess", str(archive), "--pdf", str(report)]).exit_code == 0
    result = CliRunner().invoke(cli, ["verify", str(report), str(archive)])
    assert result.exit_code == 0, result.output
    assert "THE SAME" in result.output


def test_what_cannot_be_read_is_a_fault(tmp_path: Path) -> None:
    (tmp_path / "bad.zip").write_bytes(b"PK\x03\x04 no zip")
    (tmp_path / "empty.zip").write_bytes(b"PK\x05\x06" + bytes(18))
    (tmp_path / "bad.yaml").write_bytes(b"\xff\xfe\x00")
    for name in ("bad.zip", "empty.zip", "bad.yaml"):
        with pytest.raises(Faults):
            record_text(tmp_path / name)


def test_a_pipe_has_no_text_left_and_the_report_says_so(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    assert record_text(pipe) is None
    writer = threading.Thread(target=lambda: pipe.write_text(SMALL), daemon=True)
    writer.start()
    result = CliRunner().invoke(cli, ["assess", str(pipe), "--pdf", str(tmp_path / "report.pdf")])
    writer.join(timeout=30)

    assert result.exit_code == 0, result.output
    assert "came through a pipe" in result.stderr
    assert CliRunner().invoke(cli, ["verify", str(tmp_path / "report.pdf")]).exit_code == 2
