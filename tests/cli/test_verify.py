"""`inspector verify`: the same, what differs, an altered attachment, and what is no report at all."""

from __future__ import annotations

import io
import json
import shutil
import subprocess
import sys
import tempfile
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfReader, PdfWriter

from inspector.cli import cli
from inspector.knowledge.fingerprint import text_fingerprint
from inspector.reporting.carried import results_fingerprint

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "samples" / "handover_brake" / "record.yaml"
PRICES = ROOT / "samples" / "prices.yaml"


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


def flat(result: Result) -> str:
    return " ".join(result.output.split())


@cache
def report(*options: str) -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        result = run("assess", SAMPLE, "--pdf", f"{folder}/report.pdf", *options)
        assert result.exit_code == 0, result.output
        return Path(folder, "report.pdf").read_bytes()


def carried(pdf: bytes) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(PdfReader(io.BytesIO(pdf)).attachments["inspector.json"][0])
    return found


def altered(path: Path, *contents: dict[str, Any] | bytes) -> Path:
    """The report with other attachments in the place of its own."""
    writer = PdfWriter(clone_from=io.BytesIO(report()))
    del writer.root_object["/Names"]["/EmbeddedFiles"]  # type: ignore[attr-defined]
    for content in contents:
        raw = content if isinstance(content, bytes) else json.dumps(content).encode()
        writer.add_attachment("inspector.json", raw)
    with path.open("wb") as file:
        writer.write(file)
    return path


@pytest.fixture
def pdf(tmp_path: Path) -> Path:
    path = tmp_path / "report.pdf"
    path.write_bytes(report())
    return path


def test_the_pdf_carries_the_record_letter_by_letter_and_the_whole_assessment(pdf: Path, tmp_path: Path) -> None:
    inside = carried(pdf.read_bytes())
    run("assess", SAMPLE, "--json", tmp_path / "all.json")

    assert inside["record"] == {
        "name": "record.yaml",
        "text": SAMPLE.read_text(encoding="utf-8"),
        "sha256": text_fingerprint(SAMPLE.read_text(encoding="utf-8")),
    }
    assert inside["assessment"] == json.loads((tmp_path / "all.json").read_text())
    assert str(ROOT) not in json.dumps(inside)


def test_it_is_still_accessible_and_the_same_bytes_each_time(pdf: Path, tmp_path: Path) -> None:
    run("assess", SAMPLE, "--pdf", tmp_path / "again.pdf")
    root = PdfReader(pdf).trailer["/Root"]

    assert (tmp_path / "again.pdf").read_bytes() == report()
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()
    assert root["/MarkInfo"]["/Marked"]


@pytest.mark.parametrize(
    "options", [(), ("--for", "buyer", "--paper", "letter"), ("--for", "owner", "--prices", str(PRICES))]
)
def test_a_report_of_today_gives_the_same(tmp_path: Path, options: tuple[str, ...]) -> None:
    path = tmp_path / "report.pdf"
    path.write_bytes(report(*options))
    result = run("verify", path, SAMPLE)

    assert result.exit_code == 0, result.output
    assert "THE SAME" in result.output
    assert "The record at hand is the one in the report." in flat(result)
    assert "there is no signature" in flat(result)


def test_altered_prices_are_noticed_by_their_hash_and_by_the_costs(tmp_path: Path) -> None:
    inside = carried(report("--for", "owner", "--prices", str(PRICES)))
    inside["prices"]["text"] = inside["prices"]["text"].replace("hourly rate: 55 to 70", "hourly rate: 5 to 7")
    path = altered(tmp_path / "a.pdf", inside)
    result = run("verify", path)

    assert result.exit_code == 1
    assert "ALTERED: what is attached as “prices” does" in flat(result)
    assert "also changed: costs" in flat(result)


def test_the_price_file_is_not_written_over(tmp_path: Path) -> None:
    (tmp_path / "prices.yaml").write_bytes(PRICES.read_bytes())
    result = run("assess", SAMPLE, "--prices", tmp_path / "prices.yaml", "--pdf", tmp_path / "prices.yaml")

    assert result.exit_code == 2
    assert (tmp_path / "prices.yaml").read_bytes() == PRICES.read_bytes()


def test_a_changed_record_at_hand_is_told_with_its_line(pdf: Path, tmp_path: Path) -> None:
    lines = SAMPLE.read_text(encoding="utf-8").splitlines()
    lines[2] += " # later"
    (tmp_path / "now.yaml").write_text("\n".join(lines))
    result = run("verify", pdf, tmp_path / "now.yaml")

    assert result.exit_code == 1
    assert "“now.yaml”, is not the one in the report. The first line that differs is line 3." in flat(result)
    assert "THE SAME" in result.output


def test_a_record_altered_inside_is_noticed_by_its_hash(tmp_path: Path) -> None:
    inside = carried(report())
    inside["record"]["text"] += "# added\n"
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 1
    assert "ALTERED: what is attached as “record” does not agree with its own hash." in flat(result)


def test_a_record_altered_with_its_hash_is_noticed_by_the_printed_page(tmp_path: Path) -> None:
    inside = carried(report())
    inside["record"]["text"] += "# added\n"
    inside["record"]["sha256"] = text_fingerprint(inside["record"]["text"])
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 1
    assert "agrees with its own hashes" in flat(result)
    assert "NOT ON THE PAGES, though attached: Record" in flat(result)


def test_a_finding_made_milder_is_noticed_by_the_page_and_by_judging_again(tmp_path: Path) -> None:
    inside = carried(report())
    first = inside["assessment"]["findings"][0]
    before = first["level"]
    first.update(level="watch", says="It is fine.")
    inside["assessment_sha256"] = results_fingerprint(inside["assessment"])
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 1
    assert "NOT ON THE PAGES, though attached: It is fine." in flat(result)
    assert f"Finding changed: {first['title']} ({first['part']}, {first['place']}) [{first['rule']}]" in flat(
        result
    )
    assert f"level: “watch” became “{before}”" in flat(result)


def test_a_finding_taken_out_and_one_put_in_are_both_named(tmp_path: Path) -> None:
    inside = carried(report())
    gone, *kept = inside["assessment"]["findings"]
    more = {**gone, "rule": "brakes/no_such_rule", "title": "Quite another thing"}
    inside["assessment"]["findings"] = [*kept, more]
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 1
    assert "ALTERED: what is attached as “results” does" in flat(result)
    assert f"Finding new: {gone['title']}" in flat(result)
    assert "Finding no longer: Quite another thing" in flat(result)


def test_results_of_another_form_are_compared_as_far_as_they_go(tmp_path: Path) -> None:
    inside = carried(report())
    inside["assessment"]["score_of_old"] = 3
    inside["assessment_sha256"] = results_fingerprint(inside["assessment"])
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 1
    assert "of another form than this version prints" in flat(result)
    assert "also changed: score of old" in flat(result)


@pytest.mark.parametrize(
    "contents", [(), (b"{}",), (b"not json",), (b'{"what": "inspector report"}',), (b"a", b"b")]
)
def test_a_pdf_without_one_usable_attachment_ends_with_two(tmp_path: Path, contents: tuple[bytes, ...]) -> None:
    result = run("verify", altered(tmp_path / "a.pdf", *contents))

    assert result.exit_code == 2
    assert "a.pdf: " in result.output


@pytest.mark.parametrize("raw", [b"", b"text", b"%PDF-1.7\n", "half"])
def test_what_is_no_pdf_ends_with_two(tmp_path: Path, raw: bytes | str) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(report()[: len(report()) // 2] if isinstance(raw, str) else raw)

    assert run("verify", path).exit_code == 2
    assert run("verify", tmp_path / "none.pdf").exit_code == 2
    assert run("verify", tmp_path).exit_code == 2


def test_a_report_without_attachment_says_so(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(report("--no-attachment"))
    result = run("verify", path)

    assert result.exit_code == 2
    assert "carries no record" in result.output


def test_a_record_that_today_cannot_be_read_ends_with_two_and_its_place(tmp_path: Path) -> None:
    inside = carried(report())
    inside["record"]["text"] = inside["record"]["text"].replace("observations:", "observatoins:")
    result = run("verify", altered(tmp_path / "a.pdf", inside))

    assert result.exit_code == 2
    assert "a.pdf/record.yaml:" in result.output
    assert "Did you mean `observations`?" in result.output


def test_changed_rules_are_told_finding_by_finding(pdf: Path, tmp_path: Path) -> None:
    """A copy of the program in which one rule that stands has gone and one says something else."""
    inside = carried(report())
    plain = [one for one in inside["assessment"]["findings"] if not one["explained_by"]]
    other = plain[0]
    for folder in ("inspector", "rules", "report_templates"):
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=shutil.ignore_patterns("__pycache__"))
    file = tmp_path / "rules" / "findings" / f"{other['rule']}.yaml"
    file.write_text(file.read_text().replace(f"title: {other['title']}", "title: Renamed for a test"))
    assert "Renamed for a test" in file.read_text()

    done = subprocess.run(
        [sys.executable, "-m", "inspector", "verify", str(pdf)], cwd=tmp_path, capture_output=True, text=True
    )
    text = " ".join(done.stdout.split())
    assert done.returncode == 1, done.stderr
    assert "The rules have changed since: fingerprint" in text
    assert "Finding changed: Renamed for a test" in text
    assert "also changed: title" in text
