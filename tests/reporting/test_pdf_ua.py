"""Conditions of the Matterhorn Protocol 1.1 (PDF Association, 2021) that a program can tell, by another library.

WeasyPrint writes the PDF; pikepdf (qpdf) reads it here. A condition stands beside its check by number. What only a
person can tell (whether a text says what a picture shows) is not in here, nor is every condition of the Protocol.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from collections.abc import Iterator
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from inspector import assess, read
from inspector.reporting.pdf import to_pdf

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
CASES = [("oil_that_looked_milky", "mechanic"), ("before_purchase", "buyer"), ("after_service", "owner")]
SHOWS = {"Tj", "TJ", "'", '"', "Do", "f", "F", "f*", "S", "s", "B", "B*", "b", "b*", "sh", "EI"}
CHILDREN = {  # which tags may lie in a tag (09-004, 09-005; ISO 32000-1, tables 336 and 337)
    "/L": {"/LI", "/Caption"},
    "/LI": {"/Lbl", "/LBody"},
    "/Table": {"/TR", "/THead", "/TBody", "/TFoot", "/Caption"},
    "/THead": {"/TR"},
    "/TBody": {"/TR"},
    "/TR": {"/TH", "/TD"},
}
STANDARD = {*CHILDREN, *(f"/H{n}" for n in range(1, 7)), "/Document", "/Part", "/Art", "/Sect", "/Div", "/P"} | {
    *("/Lbl", "/LBody", "/TH", "/TD", "/Span", "/Link", "/Figure", "/Caption", "/BlockQuote", "/NonStruct"),
}


@cache
def written(name: str, reader: str) -> bytes:
    record = SAMPLES / name / "record.yaml"
    return to_pdf(assess(read(record)), reader, photo_folder=record.parent)


@pytest.fixture(params=CASES, ids=lambda case: "-".join(case))
def document(request: pytest.FixtureRequest) -> Iterator[pikepdf.Pdf]:
    with pikepdf.open(BytesIO(written(*request.param))) as opened:
        yield opened


def tags(node: Any) -> Iterator[Any]:
    """Every element of the tag tree, in reading order."""
    if isinstance(node, pikepdf.Array):
        for child in node.as_list():
            yield from tags(child)
    elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
        yield node
        if "/K" in node:
            yield from tags(node.K)


def elements(document: pikepdf.Pdf) -> list[Any]:
    return list(tags(document.Root.StructTreeRoot.K))


def kids(element: Any) -> list[Any]:
    found = element.get("/K", pikepdf.Array())
    return found.as_list() if isinstance(found, pikepdf.Array) else [found]


def test_the_document_says_what_it_is(document: pikepdf.Pdf) -> None:
    root = document.Root

    assert root.MarkInfo.Marked is True
    assert not root.MarkInfo.get("/Suspects", False)  # 01-007
    assert re.fullmatch(r"[a-z]{2}(-[A-Z]{2})?", str(root.Lang))  # 11-006
    assert root.ViewerPreferences.DisplayDocTitle is True  # 07-001, 07-002
    assert not document.is_encrypted  # 26-001
    assert "/AcroForm" not in root
    meta = document.open_metadata()  # 06-001
    assert meta["pdfuaid:part"] == "1"  # 06-002
    assert meta["dc:title"]  # 06-003
    assert set(root.StructTreeRoot.get("/RoleMap", {}).keys()) == set()  # 02-001 to 02-004


def test_every_mark_on_a_page_is_tagged_once_or_an_artifact(document: pikepdf.Pdf) -> None:
    owners = pikepdf.NumberTree(document.Root.StructTreeRoot.ParentTree)
    for page in document.pages:
        parents, seen, inside = owners[page.obj.StructParents].as_list(), Counter[int](), []
        for operands, operator in pikepdf.parse_content_stream(page):
            name = str(operator)
            if name in ("BMC", "BDC"):
                number = operands[1].get("/MCID") if name == "BDC" and len(operands) > 1 else None
                marks = [*inside, (str(operands[0]), number)]
                tagged = any(one is not None for _, one in inside)
                artifact = any(tag == "/Artifact" for tag, _ in inside)
                assert not (str(operands[0]) == "/Artifact" and tagged)  # 01-003
                assert not (number is not None and artifact)  # 01-004
                if number is not None:
                    seen[int(number)] += 1
                inside = marks
            elif name == "EMC":
                inside.pop()
            elif name in SHOWS:
                assert any(tag == "/Artifact" or number is not None for tag, number in inside), name  # 01-005
        assert inside == []
        assert set(seen.values()) <= {1}
        assert set(seen) <= set(range(len(parents)))
        assert all("/S" in parents[number] for number in seen)


def test_tags_are_standard_and_lists_and_tables_are_well_built(document: pikepdf.Pdf) -> None:
    found = elements(document)

    assert {str(one.S) for one in found} <= STANDARD  # 02-001
    for one in found:
        allowed = CHILDREN.get(str(one.S))
        inside = {str(kid.S) for kid in kids(one) if isinstance(kid, pikepdf.Dictionary) and "/S" in kid}
        assert allowed is None or inside <= allowed, (one.S, inside)  # 09-004, 09-005
    for one in found:
        if one.S == "/TH":
            assert one.A.Scope in ("/Column", "/Row")  # 15-003


def test_every_picture_has_words(document: pikepdf.Pdf) -> None:
    figures = [one for one in elements(document) if one.S == "/Figure"]

    assert figures
    assert all(str(one.get("/Alt", "")).strip() for one in figures)  # 13-004


def test_headings_begin_with_the_first_level_and_skip_none(document: pikepdf.Pdf) -> None:
    levels = [int(str(one.S)[2:]) for one in elements(document) if re.fullmatch(r"/H[1-6]", str(one.S))]

    assert levels[0] == 1  # 14-002
    assert all(after <= before + 1 for before, after in pairwise(levels))  # 14-003
    assert levels.count(1) == 1


def test_every_link_is_in_the_tree_and_tabs_follow_it(document: pikepdf.Pdf) -> None:
    linked = [kid.Obj.objgen for one in elements(document) if one.S == "/Link" for kid in kids(one)
              if isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == "/OBJR"]  # fmt: skip
    links = 0
    for page in document.pages:
        annotations = page.obj.get("/Annots", pikepdf.Array()).as_list()
        if annotations:
            assert page.obj.Tabs == "/S"  # 28-008, 28-009
        for one in annotations:
            assert one.Subtype == "/Link"
            assert one.objgen in linked  # 28-011
            assert re.match(r"To (finding|caution|source)", str(one.Contents))  # 28-012
            links += 1
    assert links == len(linked) > 0


def test_every_font_is_in_the_file_and_gives_back_its_letters(document: pikepdf.Pdf) -> None:
    fonts = {font.objgen: font for page in document.pages for font in page.obj.Resources.Font.values()}

    assert fonts
    for font in fonts.values():
        described = font.DescendantFonts[0].FontDescriptor
        assert any(key in described for key in ("/FontFile", "/FontFile2", "/FontFile3"))  # 31-009
        assert "/ToUnicode" in font  # 31-027


def test_bookmarks_lead_to_every_finding(document: pikepdf.Pdf) -> None:
    with document.open_outline() as outline:
        sections = [str(one.title) for one in outline.root[0].children]

    assert {"Findings, worst first", "Where it comes from", "How a level comes about"} <= set(sections)


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="qpdf is not installed here")
def test_qpdf_finds_no_fault(tmp_path: Path) -> None:
    path = tmp_path / "report.pdf"
    path.write_bytes(written(*CASES[0]))
    run = subprocess.run(["qpdf", "--check", str(path)], capture_output=True, text=True)

    assert run.returncode == 0, run.stdout + run.stderr
    assert "No syntax or stream encoding errors found" in run.stdout
