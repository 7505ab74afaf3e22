"""Part records of other forms made one: a filled sheet, the zips of two phones, and what is said of comments."""

from __future__ import annotations

import io
import json
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfWriter

from inspector import read
from inspector.cli import cli
from inspector.knowledge.library import knowledge
from inspector.reading.inspection import TyreCode
from inspector.reading.sheet_fields import field_name
from inspector.reporting.sheet_paper import sheet_pdf
from inspector.reporting.sheet_plan import make_plan

KNOWN = knowledge()
HEAD = """\
machine: {kind: shaft drive motorcycle}
inspection: {purpose: before purchase, date: 2026-05-01}
"""


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


def test_a_filled_sheet_and_two_phones_become_one_record_with_the_photos_of_both(tmp_path: Path) -> None:
    plan = make_plan(KNOWN, "shaft_drive", "before purchase", "core")
    rear = [stop for stop in plan.stations if stop.title == "rear"]
    writer = PdfWriter(clone_from=io.BytesIO(sheet_pdf(replace(plan, stations=tuple(rear)), KNOWN)))
    given = {
        field_name("inspection", "date"): "2026-05-01",
        field_name("value", "tyre", "rear", "date_code", ""): "1416",
    }
    for page in writer.pages:
        writer.update_page_form_field_values(page, given)
    writer.write(tmp_path / "sheet.pdf")
    head = {"machine": {"kind": "shaft drive motorcycle"}, "inspection": {"purpose": "before purchase"}}
    head["inspection"]["date"] = "2026-05-01"
    for name, part in (("one.zip", "tyre"), ("two.zip", "wheel")):
        look = {"cracks" if part == "tyre" else "rim": {"could not see": None, "photo": "photos/a.jpg"}}
        with zipfile.ZipFile(tmp_path / name, "w") as packed:
            packed.writestr("record.json", json.dumps({**head, "observations": {f"{part} @ front": look}}))
            packed.writestr("photos/a.jpg", name)
    half, whole = tmp_path / "half.yaml", tmp_path / "out" / "whole.yaml"
    whole.parent.mkdir()
    assert (
        run("merge", tmp_path / "one.zip", tmp_path / "two.zip", "--out", whole.parent / "half.yaml").exit_code
        == 0
    )
    result = run("merge", tmp_path / "sheet.pdf", whole.parent / half.name, "--out", whole)

    assert (result.exit_code, result.stderr) == (0, f"Written: {whole}\n")
    found = read(whole).observations
    assert found["tyre", "rear", "date_code"].value == TyreCode("1416")
    photos = [found[part, "front", name].photo for part, name in (("tyre", "cracks"), ("wheel", "rim"))]
    assert [(whole.parent / str(one)).read_text() for one in photos] == ["one.zip", "two.zip"]


@pytest.mark.parametrize(("line", "told"), [("# mine\n", True), ("remarks: [no. 3]\n", False)])
def test_comments_are_spoken_of_only_where_there_are_some(line: str, told: bool, tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(HEAD + line)
    (tmp_path / "b.yaml").write_text(HEAD)
    result = run("merge", tmp_path / "a.yaml", tmp_path / "b.yaml", "--out", tmp_path / "c.yaml")
    assert result.exit_code == 0
    assert ("Comments" in result.stderr) is told


def test_the_photos_of_a_zip_are_not_left_where_nothing_was_merged(tmp_path: Path) -> None:
    for name, answer in (("one.zip", "none"), ("two.zip", "deep")):
        record = {
            "machine": {"kind": "shaft drive motorcycle"},
            "inspection": {"purpose": "before purchase", "date": "2026-05-01"},
            "observations": {"tyre @ front": {"cracks": {"value": answer, "photo": "photos/a.jpg"}}},
        }
        with zipfile.ZipFile(tmp_path / name, "w") as packed:
            packed.writestr("record.json", json.dumps(record))
            packed.writestr("photos/a.jpg", name)
    result = run("merge", tmp_path / "one.zip", tmp_path / "two.zip", "--out", tmp_path / "whole.yaml")

    assert result.exit_code == 2
    assert "contradict each other" in result.stderr
    assert sorted(one.name for one in tmp_path.iterdir()) == ["one.zip", "two.zip"]
