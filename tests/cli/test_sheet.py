"""`inspector sheet`: files, the words it takes, and the way back through `inspector assess`."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject, TextStringObject

from inspector.cli import cli
from inspector.reading.sheet_fields import field_name

MACHINE = ("--machine", "belt drive motorcycle", "--for", "handover")


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


def test_the_filled_sheet_goes_into_assess_as_it_is(tmp_path: Path) -> None:
    sheet, report = tmp_path / "sheet.pdf", tmp_path / "report.pdf"
    made = run("sheet", *MACHINE, "--out", sheet)
    assert (made.exit_code, made.stderr) == (0, f"Written: {sheet}\n")
    writer = PdfWriter(clone_from=PdfReader(sheet))
    for page in writer.pages:
        for widget in (one.get_object() for one in page["/Annots"]):
            if widget["/T"] == field_name("inspection", "date"):
                widget[NameObject("/V")] = TextStringObject("2026-05-01")
            if widget["/T"] == field_name("word", "tyre", "rear", "cracks", "deep"):
                widget[NameObject("/V")] = widget[NameObject("/AS")] = NameObject("/on")
    writer.write(sheet)

    judged = run("assess", sheet, "--pdf", report, "--fail-at", "repair")
    assert judged.exit_code == 1
    assert "crack" in judged.stdout.lower()
    assert report.stat().st_size > 10_000


def test_without_a_name_the_sheet_gets_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("sheet", "--machine", "belt-drive", "--for", "handover").exit_code == 0
    assert [one.name for one in tmp_path.iterdir()] == ["sheet.pdf"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--machine", "tricycle", "--for", "handover"), "the machine kind `tricycle` is not known"),
        (("--machine", "belt_drive", "--for", "hand over"), "Did you mean `handover`?"),
        ((*MACHINE, "--depth", "ful"), "Did you mean `full`?"),
        ((*MACHINE, "--work", "break pads @ front"), "Did you mean `brake pads`?"),
        ((*MACHINE, "--out", "nowhere/sheet.pdf"), "there is no folder nowhere"),
    ],
)
def test_a_wrong_word_gets_one_sentence_and_nothing_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, arguments: tuple[str, ...], said: str
) -> None:
    monkeypatch.chdir(tmp_path)
    result = run("sheet", *arguments)
    assert result.exit_code == 2
    assert said in result.stderr
    assert result.stderr.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


def test_the_page_is_one_file_that_names_no_other(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    assert run("sheet", *MACHINE, "--depth", "short", "--html", page).exit_code == 0
    text = page.read_text(encoding="utf-8")
    assert [one.name for one in tmp_path.iterdir()] == ["page.html"]
    assert "default-src 'none'" in text
    assert not re.search(r"\b(https?|wss?|ftp):", text)
    assert not re.search(r"\b(fetch|XMLHttpRequest|sendBeacon|WebSocket|import)\s*\(", text)
    assert not re.search(r"\b(innerHTML|outerHTML|insertAdjacentHTML|document\.write|eval)\b", text)
    assert re.findall(r'(?:src|href)="([^"]*)"', text) == ["data:,"]


def test_what_was_worked_on_narrows_the_looks_after_a_service(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    base = ("sheet", "--machine", "belt drive motorcycle", "--for", "after own service", "--html", page)
    run(*base)
    whole = page.read_text(encoding="utf-8")
    run(*base, "--work", "brake pads @ front")
    assert len(page.read_text(encoding="utf-8")) < len(whole)
    assert '"done":["brake_pads @ front"]' in page.read_text(encoding="utf-8")
