"""Two part records made one: what both say once, what one says kept, what contradicts asked about or refused."""

from __future__ import annotations

import random
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pexpect
import pytest
from click.testing import CliRunner, Result

from inspector import assess, read
from inspector.cli import cli
from inspector.noting.plain_record import record_yaml
from inspector.reading.inspection import Silent, Word
from inspector.reading.record import load_document
from tests.records import photos_beside

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*/record.yaml"))
HEAD = """\
machine: {kind: shaft drive motorcycle, odometer: 41 200 km}
inspection: {purpose: before purchase, date: 2026-05-01}
"""


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


def merged(tmp_path: Path, first: str, second: str, head: str = HEAD, other: str = HEAD) -> tuple[Result, Path]:
    out = tmp_path / "whole.yaml"
    for name, text in (("a.yaml", head + first), ("b.yaml", other + second)):
        (tmp_path / name).write_text(text)
    return run("merge", tmp_path / "a.yaml", tmp_path / "b.yaml", "--out", out), out


def looks(**parts: str) -> str:
    return "observations:\n" + "".join(f"  {part.replace('_', ' ')}: {text}\n" for part, text in parts.items())


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_a_record_cut_in_two_and_merged_gives_the_findings_of_the_whole(sample: Path, tmp_path: Path) -> None:
    dice = random.Random(sample.parent.name)
    data = load_document(sample).data
    halves: list[dict[str, Any]] = [{**data, "observations": {}}, {**data, "observations": {}}]
    for address, entry in data["observations"].items():
        for side in dice.choice([[0], [1], [0, 1]]):
            halves[side]["observations"][address] = entry
    for name, half in zip("ab", halves, strict=True):
        (tmp_path / f"{name}.yaml").write_text(record_yaml(half))
    photos_beside(sample, tmp_path)
    result = run("merge", tmp_path / "a.yaml", tmp_path / "b.yaml", "--out", tmp_path / "whole.yaml")
    assert (result.exit_code, "taken" in result.stderr) == (0, False)
    one, other = read(sample), read(tmp_path / "whole.yaml")

    assert {key: replace(look, line=0) for key, look in one.observations.items()} == {
        key: replace(look, line=0) for key, look in other.observations.items()
    }
    assert (one.limits, one.work, one.without, one.remarks) == (
        other.limits,
        other.work,
        other.without,
        other.remarks,
    )
    assert assess(other).verdict == assess(one).verdict


def test_equal_answers_in_other_words_become_one(tmp_path: Path) -> None:
    result, out = merged(
        tmp_path,
        looks(tyre_at_rear="{tread centre: 4.10 mm}", valve_at_rear="{cap: yes}").replace(" at ", " @ "),
        looks(tyre_at_rear="{tread_centre: 4.1 mm}", valve_at_rear="{cap: true}").replace(" at ", " @ "),
        other=HEAD.replace("41 200", "41200"),
    )

    assert result.exit_code == 0
    assert len(read(out).observations) == 2


def test_a_contradiction_is_reported_with_both_lines_and_nothing_is_written(tmp_path: Path) -> None:
    result, out = merged(
        tmp_path,
        looks(engine="{oil_leak: dry}"),
        looks(papers="{seller: is the keeper}", engine="{oil_leak: damp}"),
    )

    assert result.exit_code == 2
    assert not out.exists()
    assert "The two records contradict each other: engine @ engine: oil leak" in result.stderr
    assert "a.yaml:4:12: dry" in result.stderr
    assert "b.yaml:5:12: damp" in result.stderr
    assert "1 contradiction, nothing was written." in result.stderr


def test_another_tool_is_another_answer(tmp_path: Path) -> None:
    first, second = (
        "observations:\n  tyre @ rear: {tread_centre: 4.1 mm with " + tool + "}\n"
        for tool in ("steel rule", "caliper")
    )

    assert merged(tmp_path, first, second)[0].exit_code == 2


@pytest.mark.parametrize(("typed", "kept"), [("1", "dry"), ("2", "damp"), ("q", None)])
def test_in_a_terminal_the_person_settles_it(tmp_path: Path, typed: str, kept: str | None) -> None:
    _, out = merged(tmp_path, looks(engine="{oil_leak: dry}"), looks(engine="{oil_leak: damp}"))
    command = f"{sys.executable} -m inspector merge {tmp_path}/a.yaml {tmp_path}/b.yaml --out {out}"
    terminal = pexpect.spawn(command, cwd=ROOT, encoding="utf-8", timeout=30)
    terminal.expect("Which one holds")
    shown = terminal.before
    terminal.sendline("maybe")
    terminal.expect("Type 1, 2 or q.")
    terminal.sendline(typed)
    terminal.expect(pexpect.EOF)
    terminal.close()

    assert "a.yaml:4:12: dry" in shown
    assert "b.yaml:4:12: damp" in shown
    assert terminal.exitstatus == (0 if kept else 2)
    if kept:
        assert read(out).observations["engine", "engine", "oil_leak"].value == Word(kept)
    else:
        assert not out.exists()


@pytest.mark.parametrize(
    ("change", "differs"),
    [
        (("2026-05-01", "2026-05-02"), "inspection: date"),
        (("before purchase", "handover"), "inspection: purpose"),
        (("shaft drive", "chain drive"), "machine: kind"),
    ],
)
def test_records_of_two_inspections_are_not_merged(tmp_path: Path, change: tuple[str, str], differs: str) -> None:
    result, out = merged(tmp_path, "", "", other=HEAD.replace(*change))

    assert (result.exit_code, out.exists()) == (2, False)
    assert f"These two records are not of one inspection: `{differs}` differs." in result.stderr
    assert change[0] in result.stderr
    assert change[1] in result.stderr


def test_a_look_that_was_made_is_taken_over_one_that_was_not_and_this_is_said(tmp_path: Path) -> None:
    first = looks(engine='{oil_leak: "not checked: dark", smoke: could not see, noise: "not checked: a"}')
    second = looks(engine='{oil_leak: dry, smoke: not checked, noise: "not checked: b"}')
    result, out = merged(tmp_path, first, second)
    found = {name: one.value for (_, _, name), one in read(out).observations.items()}

    assert result.exit_code == 0
    assert found["oil_leak"] == Word("dry")
    assert found["smoke"] == Silent("could not see")
    assert found["noise"] == Silent("not looked at", "a; b")
    assert "engine @ engine: oil leak: taken" in result.stderr
    assert "b.yaml:4:12: dry" in result.stderr
    assert "a.yaml:4:12: not checked: dark" in result.stderr
    assert "engine @ engine: smoke: taken" in result.stderr


def test_that_there_is_none_contradicts_a_value_and_a_missing_part_one_that_was_seen(tmp_path: Path) -> None:
    first, _ = merged(tmp_path, looks(abs="{lamp: does not apply}"), looks(abs="{lamp: stays on}"))
    lacking = HEAD.replace("odometer", "without: abs, odometer")
    second, _ = merged(tmp_path, looks(engine="{oil_leak: dry}"), looks(abs="{lamp: stays on}"), head=lacking)

    for result in (first, second):
        assert result.exit_code == 2
        assert "contradict each other: abs @ whole machine" in result.stderr
    assert "without abs" in second.stderr


def test_heads_and_limits_are_joined_or_contradict(tmp_path: Path) -> None:
    limits = "limits: {final drive: {oil_age: at most 24 months (manual)}}\nremarks: [one, two]\n"
    joined, out = merged(
        tmp_path,
        limits,
        limits.replace("two", "three"),
        other=HEAD.replace("2026-05-01", "2026-05-01, country: GB"),
    )
    assert joined.exit_code == 0
    assert read(out).remarks == ("one", "two", "three")
    assert read(out).country == "GB"
    assert len(read(out).limits) == 1
    apart, _ = merged(tmp_path, limits, limits.replace("24", "36"), other=HEAD.replace("41 200", "41 300"))
    assert apart.exit_code == 2
    assert "final drive: oil age" in apart.stderr
    assert "machine: odometer" in apart.stderr
    assert "2 contradictions" in apart.stderr


def test_notes_of_both_stay_and_photos_are_found_from_the_new_place(tmp_path: Path) -> None:
    for side in ("front", "rear"):
        (tmp_path / side).mkdir()
        (tmp_path / side / "it.jpg").write_bytes(b"x")
    front = looks(engine="{oil_leak: {value: dry, note: seen from the front, photo: it.jpg}}")
    (tmp_path / "front/r.yaml").write_text(HEAD + front)
    (tmp_path / "rear/r.yaml").write_text(HEAD + looks(engine="{oil_leak: {value: dry, note: me too}}"))
    out = tmp_path / "whole.yaml"
    result = run("merge", tmp_path / "front/r.yaml", tmp_path / "rear/r.yaml", "--out", out)
    look = read(out).observations["engine", "engine", "oil_leak"]
    far = run("merge", tmp_path / "front/r.yaml", tmp_path / "rear/r.yaml", "--out", tmp_path / "rear/w.yaml")

    assert result.exit_code == 0
    assert look.note == "seen from the front / me too"
    assert look.photo == "front/it.jpg"
    assert far.exit_code == 2
    assert "finds photos only in its own folder" in far.stderr


def test_tables_are_merged_as_well(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(HEAD + looks(engine="{oil_leak: dry}"))
    (tmp_path / "b.yaml").write_text(HEAD + looks(papers="{seller: is the keeper}"))
    run("table", tmp_path / "b.yaml", tmp_path / "b.xlsx")
    result = run("merge", tmp_path / "a.yaml", tmp_path / "b.xlsx", "--out", tmp_path / "whole.csv")

    assert result.exit_code == 0
    assert {name for _, _, name in read(tmp_path / "whole.csv").observations} == {"oil_leak", "seller"}
