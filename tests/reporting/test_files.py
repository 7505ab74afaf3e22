"""Saving: killed at any moment or with a full disk, the old or the new file is there and whole."""

from __future__ import annotations

import os
import random
import resource
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from inspector.cli import cli
from inspector.knowledge.library import knowledge
from inspector.noting.record_file import RecordFile
from inspector.reporting.files import write_whole

SAMPLE = Path(__file__).resolve().parents[2] / "samples" / "nearly_empty" / "record.yaml"
OLD = b"what stood here before\n"
SAVING = """
import sys
from pathlib import Path
from inspector.reporting.files import write_whole
print("begun", flush=True)
while True:
    for sign in (b"a", b"b"):
        write_whole(Path(sys.argv[1]), sign * 3_000_000)
"""
MACHINE = ("--machine", "belt drive motorcycle", "--for", "handover")
# every command that saves a file, and how that file is called
COMMANDS = {
    "report.pdf": ("assess", "RECORD", "--pdf", "FILE"),
    "report.html": ("assess", "RECORD", "--html", "FILE"),
    "report.json": ("assess", "RECORD", "--json", "FILE"),
    "due.ics": ("assess", "RECORD", "--ics", "FILE"),
    "sheet.pdf": ("sheet", *MACHINE, "--out", "FILE"),
    "page.html": ("sheet", *MACHINE, "--html", "FILE"),
    "looks.csv": ("table", "RECORD", "FILE"),
    "looks.xlsx": ("table", "RECORD", "FILE"),
    "whole.yaml": ("merge", "RECORD", "RECORD", "--out", "FILE"),
}


def test_killed_again_and_again_while_saving_the_file_is_always_whole(tmp_path: Path) -> None:
    target, dice = tmp_path / "record.yaml", random.Random(7)
    write_whole(target, b"a" * 3_000_000)
    seen, left = set(), 0
    for _ in range(25):
        saving = subprocess.Popen([sys.executable, "-c", SAVING, str(target)], stdout=subprocess.PIPE)
        assert saving.stdout is not None
        saving.stdout.readline()
        time.sleep(dice.uniform(0.0, 0.03))
        saving.send_signal(signal.SIGKILL)
        saving.communicate()
        found = target.read_bytes()
        assert len(found) == 3_000_000
        assert found in (b"a" * 3_000_000, b"b" * 3_000_000)
        seen.add(found[:1])
        left = max(left, len(list(tmp_path.iterdir())) - 1)
    assert seen == {b"a", b"b"}
    assert left > 0  # it was killed in the middle at least once

    for one in tmp_path.iterdir():
        if one != target:
            os.utime(one, (time.time() - 3600,) * 2)
    write_whole(target, OLD)
    assert list(tmp_path.iterdir()) == [target]


def test_only_old_leftovers_of_the_same_file_are_cleared(tmp_path: Path) -> None:
    hour = time.time() - 3600
    for name, when in ((".r.yaml.abcd_123", hour), (".r.yaml.young123", time.time()), (".s.yaml.abcd_123", hour),
                       (".r.yaml.mine", hour), ("r.yaml.abcd_123", hour)):  # fmt: skip
        (tmp_path / name).write_bytes(b"x")
        os.utime(tmp_path / name, (when, when))
    write_whole(tmp_path / "r.yaml", OLD)
    kept = {one.name for one in tmp_path.iterdir()}
    assert kept == {"r.yaml", ".r.yaml.young123", ".s.yaml.abcd_123", ".r.yaml.mine", "r.yaml.abcd_123"}


def test_a_private_file_stays_private_and_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "mine.yaml").write_bytes(OLD)
    (tmp_path / "mine.yaml").chmod(0o600)
    (tmp_path / "link.yaml").symlink_to("mine.yaml")
    write_whole(tmp_path / "link.yaml", b"new")
    assert (tmp_path / "link.yaml").is_symlink()
    assert (tmp_path / "mine.yaml").read_bytes() == b"new"
    assert (tmp_path / "mine.yaml").stat().st_mode & 0o777 == 0o600


@pytest.fixture
def full_disk() -> Iterator[None]:
    """No file may grow beyond some bytes: what the system says then is of the same kind as a full disk."""
    knowledge()
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (50, hard))
    yield
    resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


@pytest.mark.parametrize("name", COMMANDS)
def test_on_a_full_disk_the_old_file_stays_and_one_sentence_says_so(
    name: str, tmp_path: Path, full_disk: None
) -> None:
    target = tmp_path / name
    target.write_bytes(OLD)
    places = {"RECORD": str(SAMPLE), "FILE": str(target)}
    done = CliRunner().invoke(cli, [places.get(one, one) for one in COMMANDS[name]], catch_exceptions=False)

    assert done.exit_code == 2
    assert f"{target}: cannot be written: File too large" in done.stderr
    assert target.read_bytes() == OLD
    assert [one.name for one in tmp_path.iterdir()] == [name]


def test_on_a_full_disk_an_answer_is_refused_and_the_record_stays(tmp_path: Path, full_disk: None) -> None:
    resource.setrlimit(resource.RLIMIT_FSIZE, (200, resource.getrlimit(resource.RLIMIT_FSIZE)[1]))
    file = RecordFile(tmp_path / "r.yaml", knowledge(), date(2026, 6, 1))
    file.create("shaft_drive", "before purchase")
    before = (tmp_path / "r.yaml").read_bytes()
    with pytest.raises(OSError, match="File too large"):
        file.answer({("tyre", "rear", "cracks"): "not checked: " + "a long reason " * 10})
    assert (tmp_path / "r.yaml").read_bytes() == before
    file.answer({("tyre", "rear", "cracks"): "deep"})
    assert [one.name for one in tmp_path.iterdir()] == ["r.yaml"]
