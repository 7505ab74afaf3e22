"""One answer is added or changed; every comment and every other line of the record stays as it was."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import questions
from inspector.noting.record_file import RecordFile
from tests.records import good_value, photos_beside

KNOWN = knowledge()
TODAY = date(2026, 11, 25)
SAMPLES = sorted((Path(__file__).resolve().parents[2] / "samples").glob("*/record.yaml"))
COMMENTED = """\
# my own heading

machine:
  kind: shaft drive motorcycle   # the blue one
  odometer: 61 400 km
  without:   # looked twice
  - steering damper  # none
inspection: {purpose: before purchase, date: 2026-10-03}  # rain

observations:
  # front, left first
  Brake pad @ front left inner:
    friction material thickness: 1.2 mm with steel rule # at the thin end

  # rear
  steering head: {knock: none, turning: "not checked: no stand"}  # no stand
  # the tyre
  tyre @ rear:
    date_code: 0922   # keeps its nought
    tread_centre:
      value: 3.9 mm   # three times
      tool: tread gauge
      note: squared off
  splines @ rear wheel side: "not checked: the wheel stayed in"   # ask the seller

  # what he said
remarks:
- He said "greased".   # years ago
# end
"""


def opened(path: Path, text: str) -> RecordFile:
    path.write_bytes(text.encode())
    file = RecordFile(path, KNOWN, TODAY)
    file.read()
    return file


def added_lines(before: str, after: str) -> list[str]:
    """The lines that are new; the old ones must all be there, in their order."""
    rest, new = before.splitlines(), []
    for line in after.splitlines():
        if rest and line == rest[0]:
            rest.pop(0)
        else:
            new.append(line)
    assert rest == [], f"lost or changed: {rest}"
    return new


def test_an_answer_is_put_beside_the_others_of_its_part_and_nothing_else_moves(tmp_path: Path) -> None:
    file = opened(tmp_path / "r.yaml", COMMENTED)
    file.answer({("brake pad", "front left inner", "wear_mark"): "not checked: no torch"})
    file.answer({("valve", "rear", "condition"): "cracked"})
    file.answer({("tyre", "rear", "cracks"): "none"})
    after = (tmp_path / "r.yaml").read_text()

    assert added_lines(COMMENTED, after) == [
        '    wear mark: "not checked: no torch"',
        "    cracks: none",
        "  valve @ rear:",
        "    condition: cracked",
    ]
    lines = after.splitlines()
    assert lines.index("  # rear") > lines.index('    wear mark: "not checked: no torch"')
    assert lines.index("  # what he said") > lines.index("    condition: cracked")


def test_a_line_that_grows_too_long_is_broken_between_entries_only(tmp_path: Path) -> None:
    long = "  brake disc @ front left: {surface: smooth, film: clean, mounting: secure, edge_lip: none}\n"
    file = opened(tmp_path / "r.yaml", COMMENTED.replace("  # rear\n", long + "  # rear\n"))
    for name, value in (
        ("temperature_after_ride", "40 °C"),
        ("tissue_shows", "not checked: no tissue, a long reason"),
    ):
        file.answer({("brake disc", "front left", name): value})

    assert (
        file.inspection.observations["brake disc", "front left", "temperature_after_ride"].value.typed == "40 °C"
    )  # type: ignore[union-attr]
    assert 'tissue shows: "not checked: no tissue, a long reason"' in (tmp_path / "r.yaml").read_text()


def test_a_changed_value_keeps_its_note_and_what_is_said_of_a_whole_part_is_opened(tmp_path: Path) -> None:
    file = opened(tmp_path / "r.yaml", COMMENTED)
    file.answer({("tyre", "rear", "tread_centre"): "4.1 mm with caliper"})
    file.answer({("splines", "rear wheel side", "rust"): "none"})
    looks = file.inspection.observations

    assert looks["tyre", "rear", "tread_centre"].note == "squared off"
    assert looks["tyre", "rear", "tread_centre"].value.typed == "4.1 mm"  # type: ignore[union-attr]
    assert looks["splines", "rear wheel side", "grease"].value.reason == "the wheel stayed in"  # type: ignore[union-attr]
    text = (tmp_path / "r.yaml").read_text()
    for comment in (
        "# my own heading",
        "# three times",
        "# ask the seller",
        "# what he said",
        "# end",
        "# years ago",
    ):
        assert comment in text


def test_parts_that_the_machine_lacks_are_added_to_the_list_and_taken_off_again(tmp_path: Path) -> None:
    file = opened(tmp_path / "r.yaml", COMMENTED)
    file.head("machine", "without", [*file.without(), "abs"])
    assert added_lines(COMMENTED, (tmp_path / "r.yaml").read_text()) == ["  - abs"]
    file.head("machine", "without", ["steering damper"])

    assert (tmp_path / "r.yaml").read_text() == COMMENTED


def test_a_refused_answer_leaves_the_file_as_it_was(tmp_path: Path) -> None:
    file = opened(tmp_path / "r.yaml", COMMENTED)
    with pytest.raises(Faults, match="`12 kg`"):
        file.answer({("brake pad", "rear inner", "friction_material_thickness"): "12 kg"})
    with pytest.raises(Faults, match="lies above the odometer"):
        file.answer({("engine", "engine", "oil_changed_at"): "70 000 km"})

    assert (tmp_path / "r.yaml").read_text() == COMMENTED


def test_what_an_editor_saves_meanwhile_stays(tmp_path: Path) -> None:
    path = tmp_path / "r.yaml"
    file = opened(path, COMMENTED)
    path.write_text(COMMENTED.replace("# end", "# end, and a line of mine"))
    file.answer({("valve", "rear", "condition"): "sound"})

    assert "# end, and a line of mine" in path.read_text()


def test_line_ends_of_another_system_stay(tmp_path: Path) -> None:
    path = tmp_path / "r.yaml"
    file = opened(path, COMMENTED.replace("\n", "\r\n"))
    file.answer({("valve", "rear", "condition"): "sound"})
    raw = path.read_bytes()

    assert raw.count(b"\n") == raw.count(b"\r\n") == COMMENTED.count("\n") + 2


def test_a_record_in_json_stays_json_with_its_order(tmp_path: Path) -> None:
    data = {
        "machine": {"kind": "shaft drive motorcycle", "year": 2009},
        "inspection": {"purpose": "before purchase", "date": "2026-05-01"},
        "observations": {"tyre @ rear": {"cracks": {"value": "none", "note": "“new”"}}},
    }
    file = opened(tmp_path / "r.json", json.dumps(data))
    file.answer({("tyre", "rear", "cracks"): "deep", ("valve", "rear", "condition"): "not checked: a cap: stuck"})
    file.answer({("tyre", "front", "cracks"): "fine"})
    file.answer({("tyre", "front", "cracks"): None})
    after = json.loads((tmp_path / "r.json").read_text())

    data["observations"] = {
        "tyre @ rear": {"cracks": {"value": "deep", "note": "“new”"}},
        "valve @ rear": {"condition": "not checked: a cap: stuck"},
    }
    assert after == data
    assert list(after) == list(data)


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
@settings(max_examples=3, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_answers_to_any_sample_are_added_and_undone_without_a_trace(
    sample: Path, tmp_path: Path, data: st.DataObject
) -> None:
    text = sample.read_text()
    photos_beside(sample, tmp_path)
    file = opened(tmp_path / "r.yaml", text)
    now = file.inspection
    walk = questions(KNOWN, now.kind, now.purpose, "full", now.work, now.without)
    unanswered = [
        one
        for one in walk
        if one.key not in now.observations and one.prop.good and one.prop.kind not in ("odometer", "date")
    ]  # a reading or a day of its own would have to fit those of the sample
    chosen = data.draw(
        st.lists(st.sampled_from(unanswered), min_size=1, max_size=4, unique_by=lambda one: one.key)
    )
    for one in chosen:
        silent = data.draw(st.sampled_from(["", "not checked: no stand", "could not see"]))
        file.answer({one.key: silent or good_value(one.prop)})
    kept = file.inspection.observations
    comments = [line.strip() for line in text.splitlines() if line.strip().startswith("#")]
    after = (tmp_path / "r.yaml").read_text()

    assert [line.strip() for line in after.splitlines() if line.strip().startswith("#")] == comments
    assert set(kept) == set(now.observations) | {one.key for one in chosen}
    for one in reversed(chosen):
        file.answer({one.key: None})
    assert same(file.inspection.observations) == same(now.observations)
    assert "".join((tmp_path / "r.yaml").read_text().split()) == "".join(text.split())


def same(observations: dict[Any, Any]) -> dict[Any, Any]:
    return {key: replace(one, line=0) for key, one in observations.items()}
