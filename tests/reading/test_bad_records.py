"""What a record may not be: each case gives one clear message at the line and column where it really stands."""

from __future__ import annotations

import codecs
import os
import re
from datetime import date
from pathlib import Path

import pytest

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import knowledge
from inspector.reading.record import read_record

TODAY = date(2026, 11, 1)
HEAD = "machine: {kind: shaft drive motorcycle}\ninspection: {purpose: handover, date: 2026-05-01}\n"
FRONT = HEAD + "observations:\n  tyre @ front:\n"  # properties of the tyre begin in line 5
LEFT = HEAD + "observations:\n  brake pad @ front left inner:\n"  # properties of the pad begin in line 5
LEAKS = re.compile(
    r"pydantic|Traceback|None\b|NoneType|\bdict\b|\bstr\b|Error|\[Errno|Exception|mapping|scalar|flow seq|<block"
)


def faults_of(path: Path) -> list[Fault]:
    with pytest.raises(Faults) as refused:
        read_record(path, knowledge(), TODAY)
    found = list(refused.value.faults)
    for fault in found:
        assert fault.file == str(path)
        told = str(fault).removeprefix(str(path))
        assert not LEAKS.search(told), f"words of a programmer: {told}"
        assert len(told) < 900
        assert "\n" not in told
        assert told.isprintable() or "�" in told
    return found


def faults_in(text: str | bytes, folder: Path, name: str = "record.yaml") -> list[Fault]:
    path = folder / name
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return faults_of(path)


def one_fault(text: str | bytes, folder: Path, line: int, column: int, *words: str) -> None:
    found = faults_in(text, folder)
    assert [(f.line, f.column) for f in found] == [(line, column)], "\n".join(map(str, found))
    missing = [word for word in words if word not in found[0].text]
    assert not missing, found[0].text


VALUES = [
    # what is wrong, the line as written, column, words of the message
    ("wrong dimension", "tread_left: 3 bar", 17, ("is a pressure, a length is wanted", "mm")),
    ("no unit", "tread_left: 3.1", 17, ("no unit", "mm")),
    ("unit that is none", "tread_left: 3.1 mmm", 17, ("`mmm` is not a unit of length", "Did you mean `mm`?")),
    ("decimal comma", "tread_left: 3,1 mm", 17, ("Decimals take a point", "3.1 mm")),
    ("implausible", "tread_left: 310 mm", 17, ("`310 mm` is not believable", "from 0 mm")),
    ("below nought", "cold_pressure: -3 bar", 20, ("not believable",)),
    ("not a number", "tread_left: nan mm", 17, ("is not a length",)),
    ("without end", "tread_left: inf mm", 17, ("is not a length",)),
    ("divided by nought", "tread_left: 1/00 in", 17, ("nought",)),
    ("far too large", "tread_left: 1e400 mm", 17, ("too large",)),
    ("very long number", f"tread_left: {'9' * 199} mm", 17, ("too long",)),
    ("unknown tool", "tread_left: 3 mm with gauge stick", 17, ("the tool `gauge stick` is not known",)),
    ("unbelievable doubt", "tread_left: 3 mm ± 3 m", 17, ("± 3 m", "not believable")),
    ("negative doubt", "tread_left: 3 mm ± -1 mm", 17, ("negative",)),
    ("unknown property", "tread_lefd: 3 mm", 5, ("the property `tread_lefd`", "Did you mean `tread_left`?")),
    ("derived property", "least_tread: 3 mm", 5, ("worked out", "leave it out")),
    ("unknown choice", "cracks: fin", 13, ("the answer `fin`", "Did you mean `fine`?", "none, fine")),
    ("neither yes nor no", "rotation_right: maybe", 21, ("the answer `maybe`", "yes, no")),
    ("nothing written", "cracks:", 5, ("`cracks` is empty", "not checked: reason")),
    ("a list for a text", "cracks: [none, fine]", 13, ("`cracks` takes one value, not a list",)),
    ("week 60", "date_code: 6019", 16, ("week 60",)),
    ("code of the future", "date_code: 4626", 16, ("future",)),
    ("no tyre code", "date_code: '20 12'", 16, ("four digits",)),
    ("silence without reason", "cracks: not checked yet", 13, ("write `not checked: reason`",)),
    ("two silences", "cracks: {not checked: dark, could not see: dirt}", 33, ("together", "keep one")),
    (
        "value and silence",
        "cracks: {value: none, not checked: dark}",
        27,
        ("`value` and `not checked`", "keep one"),
    ),
    ("denied silence", "cracks: {not checked: no}", 27, ("neither this nor that",)),
    ("reason that is a list", "cracks: {not checked: [a, b]}", 27, ("plain text", "a list")),
    ("tool without value", "tread_left: {not checked: dark, tool: caliper}", 37, ("no value stands here",)),
    ("two tools", "tread_left: {value: 3 mm with caliper, tool: steel rule}", 44, ("name one tool",)),
    ("tool for a word", "cracks: {value: none, tool: caliper}", 27, ("only with a measured amount",)),
    ("tool that is a list", "tread_left: {value: 3 mm, tool: [caliper]}", 37, ("plain text", "a list")),
    ("unknown heading", "cracks: {value: none, nots: x}", 27, ("the heading `nots`", "Did you mean `note`?")),
    ("comma in a note", "cracks: {value: none, note: thin, left}", 39, ("`left`", "needs quotes")),
    ("note that is a list", "cracks: {value: none, note: [thin]}", 33, ("plain text", "a list")),
    ("note that has headings", "cracks: {value: none, note: {a: b}}", 33, ("plain text", "headings")),
    ("note too long", f"cracks: {{value: none, note: {'x' * 4001}}}", 33, ("4001 characters; at most 4000",)),
    ("only a note", "cracks: {note: thin}", 5, ("`cracks` has no `value`",)),
    ("photo that is a list", "cracks: {value: none, photo: [a]}", 34, ("name of a picture file",)),
    ("photo not there", "cracks: {value: none, photo: a.jpg}", 34, ("`a.jpg` is not a file beside the record",)),
    ("photo outside", "cracks: {value: none, photo: ../a.jpg}", 34, ("outside the folder",)),
    ("photo elsewhere", "cracks: {value: none, photo: /etc/hostname}", 34, ("outside the folder",)),
    ("photo is the folder", "cracks: {value: none, photo: .}", 34, ("is a folder, not a photo",)),
    ("photo name too long", f"cracks: {{value: none, photo: {'a' * 3000}}}", 34, ("not a usable file name",)),
    ("photo name of no file", 'cracks: {value: none, photo: "a\\0b"}', 34, ("not a usable file name",)),
]


@pytest.mark.parametrize(("line", "column", "words"), [v[1:] for v in VALUES], ids=[v[0] for v in VALUES])
def test_a_look_that_cannot_be_used_is_refused(
    tmp_path: Path, line: str, column: int, words: tuple[str, ...]
) -> None:
    one_fault(f"{FRONT}    {line}\n", tmp_path, 5, column, *words)


SECTIONS = [
    ("unknown part", "observations:\n  brake pd @ front left inner: {taper: none}", 4, 3,
     ("the part `brake pd`", "Did you mean `brake pad`?")),
    ("unknown place", "observations:\n  brake pad @ front lift inner: {taper: none}", 4, 3,
     ("the place `front lift inner`", "Did you mean `front left inner`?")),
    ("place left out", "observations:\n  tyre: {cracks: none}", 4, 3, ("several places", "tyre @ front")),
    ("nothing below a part", "observations:\n  tyre @ front:", 4, 3, ("nothing stands below `tyre @ front`",)),
    ("word for a whole part", "observations:\n  tyre @ front: good", 4, 17, ("`good` says nothing about `tyre`",)),
    ("list below a part", "observations:\n  tyre @ front: [good]", 4, 17, ("headings below it, not a list",)),
    ("observations a list", "observations:\n  - tyre", 4, 3, ("`observations` must have headings",)),
    ("observations a text", "observations: none", 3, 15, ("`observations` must have headings", "`none`")),
    ("unknown section", "observatons: {}", 3, 1, ("`observatons`", "Did you mean `observations`?")),
    ("same key twice", "remarks: a\nremarks: b", 4, 1, ("`remarks` stands in line 3 already",)),
    ("same look twice", "observations:\n  tyre @ front:\n    date_code: 1216\n    date code: 1217", 6, 5,
     ("`date_code` of `tyre @ front` stands in line 5 already",)),
    ("same part twice", "observations:\n  drive shaft: {boot: sound}\n  drive_shaft @ Rear: {tunnel: dry}", 5, 3,
     ("`drive shaft @ rear` stands in line 4 already", "as `drive shaft`")),
    ("limit of nothing", "limits:\n  brake disc:\n    thick: at least 4 mm", 5, 5,
     ("a limit of `thick`", "thickness")),
    ("limit of a part unknown", "limits:\n  brake disk: {thickness: at least 4 mm}", 4, 3, ("brake disc",)),
    ("limit without sense", "limits:\n  brake disc:\n    thickness: 4 mm", 5, 16, ("at least 1.5 mm (stamped)",)),
    ("limit that is a list", "limits:\n  brake disc:\n    thickness: [4 mm]", 5, 16, ("a list is no limit",)),
    ("limit of unknown origin", "limits:\n  brake disc:\n    thickness: at least 4 mm (friend)", 5, 16,
     ("the origin `friend`", "stamped, manual")),
    ("limit the wrong way round", "limits:\n  brake disc:\n    thickness: from 6 mm to 4 mm", 5, 16,
     ("wrong way",)),
    ("limit not believable", "limits:\n  brake disc:\n    thickness: at least 4 m", 5, 16, ("not believable",)),
    ("limit of another dimension", "limits:\n  brake disc:\n    thickness: at least 4 bar", 5, 16, ("pressure",)),
    ("limit twice", "limits:\n  brake disc:\n    thickness: at least 4 mm\n    Thickness: at least 5 mm", 6, 5,
     ("stands in line 5 already",)),
    ("unknown work", "work done: [brake pds @ front]", 3, 13, ("the work `brake pds`", "brake pads")),
    ("work without a place", "work done: brake pads", 3, 12, ("`brake pads @ front`", "front, rear")),
    ("work that is no work", "work done: second look @ front", 3, 12, ("the work `second look` is not known",)),
    ("work twice", "work done:\n  - brake pads @ front\n  - brake_pads @ Front", 5, 5, ("line 4 already",)),
    ("work with headings", "work done: {brake pads: front}", 3, 12, ("plain text", "headings")),
    ("work denied", "work done: brake pads @ front\nobservations:\n  work @ front: {brake_pads: no}", 3, 12,
     ("said to be done, yet line 5 says no",)),
    ("remark that is no text", "remarks:\n  - fine\n  - {a: b}", 5, 5, ("plain text", "headings")),
    ("invented, perhaps", "invented: perhaps", 3, 11, ("`perhaps` must be yes", "or no")),
]  # fmt: skip


@pytest.mark.parametrize(
    ("body", "line", "column", "words"), [s[1:] for s in SECTIONS], ids=[s[0] for s in SECTIONS]
)
def test_a_section_that_cannot_be_used_is_refused(
    tmp_path: Path, body: str, line: int, column: int, words: tuple[str, ...]
) -> None:
    one_fault(f"{HEAD}{body}\n", tmp_path, line, column, *words)


HEADS = [
    ("unknown kind", "kind: shaft driven motorcycle", None, 2, 9, ("`shaft driven motorcycle`", "Did you mean")),
    ("kind that is a list", "kind: [a]", None, 2, 9, ("plain text", "a list")),
    ("no kind", "name: the blue one", None, 1, 1, ("`kind` is missing", "shaft drive motorcycle")),
    ("year in words", "kind: shaft_drive\n  year: about 1990", None, 3, 9, ("1900 to 2027",)),
    ("year to come", "kind: shaft_drive\n  year: 2031", None, 3, 9, ("`2031` is not a year",)),
    ("odometer without unit", "kind: shaft_drive\n  odometer: 41200", None, 3, 13, ("no unit", "km, mi")),
    ("odometer a list", "kind: shaft_drive\n  odometer: [1 km]", None, 3, 13, ("plain text", "a list")),
    ("odometer below nought", "kind: shaft_drive\n  odometer: -4 km", None, 3, 13, ("no believable odometer",)),
    ("frame number too short", "kind: shaft_drive\n  vin: AB1", None, 3, 8, ("not a frame number",)),
    ("letter no VIN has", "kind: shaft_drive\n  vin: ABCDEFGHIJ1234567", None, 3, 8, ("I, O and Q",)),
    ("name that has headings", "kind: shaft_drive\n  name: {a: b}", None, 3, 9, ("plain text", "headings")),
    ("without what is unknown", "kind: shaft_drive\n  without: wings", None, 3, 12, ("the part `wings`",)),
    ("no purpose", None, "date: 2026-05-01", 3, 1, ("`purpose` is missing", "before purchase")),
    ("unknown purpose", None, "purpose: hand over\n  date: 2026-05-01", 4, 12, ("Did you mean `handover`?",)),
    ("no date", None, "purpose: handover", 3, 1, ("`date` is missing", "year-month-day")),
    ("date of tomorrow", None, "purpose: handover\n  date: 2026-11-02", 5, 9, ("future", "2026-11-01")),
    ("date in another order", None, "purpose: handover\n  date: 17.5.2026", 5, 9, ("not a date", "2024-05-17")),
    ("30 February", None, "purpose: handover\n  date: 2026-02-30", 5, 9, ("not a day of the calendar",)),
    ("date before there were engines", None, "purpose: handover\n  date: 1066-10-14", 5, 9, ("before 1900",)),
    ("country in full", None, "purpose: handover\n  date: 2026-05-01\n  country: Britain", 6, 12,
     ("two letters",)),
    ("horizon of weight", None, "purpose: handover\n  date: 2026-05-01\n  horizon: 3 kg", 6, 12,
     ("neither a time",)),
    ("horizon twice", None, "purpose: handover\n  date: 2026-05-01\n  horizon: 3 months, 4 months", 6, 12,
     ("a time stands before it already",)),
    ("horizon of twelve metres", None, "purpose: handover\n  date: 2026-05-01\n  horizon: 12 m", 6, 12, ("1 km",)),
    ("horizon beyond sight", None, "purpose: handover\n  date: 2026-05-01\n  horizon: 11 years", 6, 12,
     ("10 years",)),
    ("unknown heading", None, "purpose: handover\n  date: 2026-05-01\n  cuntry: GB", 6, 3, ("country",)),
]  # fmt: skip


@pytest.mark.parametrize(
    ("machine", "visit", "line", "column", "words"), [h[1:] for h in HEADS], ids=[h[0] for h in HEADS]
)
def test_a_head_of_the_record_that_cannot_be_used_is_refused(
    tmp_path: Path, machine: str | None, visit: str | None, line: int, column: int, words: tuple[str, ...]
) -> None:
    machine = machine or "kind: shaft_drive"
    visit = visit or "purpose: handover\n  date: 2026-05-01"
    one_fault(f"machine:\n  {machine}\ninspection:\n  {visit}\n", tmp_path, line, column, *words)


SYNTAX = [
    ("second colon", "a: b: c\n", 1, 5, ("second colon", "quotes")),
    ("quote never closed", "a: 1\nb: \"abc\nc: 2\n", 2, 4, ("no closing \"",)),
    ("quote closed by the next one", 'a: 1\nb: "abc\nc: "2"\n', 2, 4, ("no closing \"",)),
    ("bracket never closed", "a: 1\nb: [1, 2\nc: 2\n", 2, 9, ("closing ]", "line 2")),
    ("brace never closed", "a: 1\nb: {x: 1, y: 2\n", 2, 15, ("closing }",)),
    ("tabulator", "a:\n\tb: 1\n", 2, 1, ("tabulator", "blanks")),
    ("tabulator further down", "a:\n  b: 1\n\tc: 1\n", 3, 1, ("tabulator",)),
    ("indented too little", "a:\n    b: 1\n  c: 1\n", 3, 3, ("same column",)),
    ("indented too much", "a:\n  b: 1\n    c: 1\n", 3, 5, ("indented further",)),
    ("first line indented", "  a: 1\nb: 2\n", 2, 1, ("further left than the first",)),
    ("colon forgotten", "a:\n  b 1\n  c: 2\n", 2, 3, ("colon after the heading is missing",)),
    ("colon forgotten at the left", "a: 1\nb\nc: 2\n", 2, 1, ("colon after the heading is missing",)),
    ("blank after the colon forgotten", "a:\n  b:1\n  c: 2\n", 2, 3, ("a blank is missing after the colon",)),
    ("list entry among headings", "a: 1\n- b\n", 2, 1, ("list entry",)),
    ("text after a quote", "a: 'it's'\n", 1, 8, ("one pair of quotes",)),
    ("text that begins with @", "a: @b\n", 1, 4, ("cannot begin with `@`",)),
    ("text that begins with *", "a: *very* good\n", 1, 4, ("cannot begin with `*`",)),
    ("text that begins with !", "a: !b!c d\n", 1, 4, ("cannot begin with `!`",)),
    ("backslash in quotes", 'a: "c:\\q"\n', 1, 7, ("backslash", "single quotes")),
    ("half a character", '{"a": "\\ud83d"}\n', 1, 10, ("names no character",)),
    ("escape that is none", '{"a": "\\ud8zz"}\n', 1, 10, ("names no character",)),
    ("comma forgotten in JSON", '{"a": 1\n "b": 2}\n', 1, 8, ("a comma or the closing }",)),
    ("text after the JSON", '{"a": 1}\nfoo: 1\n', 2, 1, ("ended before this",)),
    ("second record", "a: 1\n---\nb: 2\n", 2, 1, ("second record",)),
    ("heading that is a list", "? [a]\n: b\n", 1, 3, ("a heading must be plain text",)),
    ("nested without end", "a: " + "[" * 900, 1, 19, ("nested more than 16 deep",)),
    ("nested beyond all reason", "[" * 100_000, 1, 1001, ("nested too deep",)),
    ("bytes that are no text", b"a: 1\nb: x\x00y\n", 2, 5, ("no text has", "number 0")),
    ("terminal escape", b"a: \xc3\xa9\x1b[31m\n", 1, 5, ("no text has", "number 27")),
    ("letters of another age", "machine: Jürgen\n".encode("latin-1"), 1, 11, ("UTF-8",)),
    ("a picture", b"\x89PNG\r\n\x1a\n\x00\x00", 1, 1, ("UTF-8", "no text file")),
    ("16 bits a letter", codecs.BOM_UTF16_LE + "a: b".encode("utf-16-le"), 1, 1, ("UTF-16", "UTF-8")),
    ("nothing", b"", 1, 1, ("the file is empty",)),
    ("nothing but blanks", b" \n\n", 1, 1, ("the file is empty",)),
    ("nothing but a comment", "# hello\n", 1, 1, ("machine, inspection and observations", "nothing")),
    ("a list", "- a\n- b\n", 1, 1, ("headings", "a list")),
    ("a word", "hello\n", 1, 1, ("headings", "`hello`")),
    ("too much of it", b"a: " + b"b" * 2_000_001, 1, 1, ("2 MB",)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "line", "column", "words"), [s[1:] for s in SYNTAX], ids=[s[0] for s in SYNTAX])
def test_a_file_that_is_no_record_is_refused_in_plain_words(
    tmp_path: Path, text: str | bytes, line: int, column: int, words: tuple[str, ...]
) -> None:
    one_fault(text, tmp_path, line, column, *words)


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_lines_are_counted_whatever_ends_them(tmp_path: Path, line_end: str) -> None:
    text = f"{FRONT}    # a comment\n\n    cracks: fin\n".replace("\n", line_end)
    one_fault(codecs.BOM_UTF8 + text.encode(), tmp_path, 7, 13, "`fin`")


def test_columns_of_json_are_those_of_the_file_in_spite_of_escaped_emoji(tmp_path: Path) -> None:
    text = (
        '{"machine": {"kind": "shaft_drive", "name": "\\ud83d\\ude00 and \\ud83c\\udfcd"}, "inspection":'
        ' {"purpose": "handover", "date": "2026-05-01"}, "x": 1}'
    )
    one_fault(text, tmp_path, 1, text.index('"x"') + 1, "the heading `x`")


def test_all_faults_of_a_file_are_told_at_once_in_their_order(tmp_path: Path) -> None:
    text = """\
machine:
  kind: hovercraft
  year: soon
inspection:
  purpose: sell
  date: 2099-01-01
  horizon: never
observations:
  brake pd: x
  tyre @ front:
    cracks: *much*
    damage: &some none
    damage: none
    tread_left: [1, 2]
limits: 3
remarks: {a: b}
invented: perhaps
"""
    syntax = faults_in(text, tmp_path)
    assert [(f.line, f.column) for f in syntax] == [(11, 13)]  # unreadable beyond: the first is all there is
    found = faults_in(text.replace("*much*", "*much"), tmp_path)
    lines = [f.line for f in found]
    assert lines == [2, 3, 5, 6, 7, 9, 11, 12, 13, 14, 15, 16, 17], "\n".join(map(str, found))


def test_too_many_faults_end_the_reading_with_a_word(tmp_path: Path) -> None:
    text = HEAD + "observations:\n" + "".join(f"  part{n}: x\n" for n in range(20_000))
    found = faults_in(text, tmp_path)
    assert len(found) == 201
    assert "mend these first" in found[-1].text


def test_what_the_machine_is_said_to_be_without_must_not_be_observed(tmp_path: Path) -> None:
    text = f"""\
machine: {{kind: shaft_drive, without: [brake disc @ front right, brake caliper @ front right]}}
{HEAD.splitlines()[1]}
observations:
  brake disc @ front right: {{film: clean, mounting: secure}}
  brake caliper @ front right: does not apply
"""
    one_fault(text, tmp_path, 1, 40, "without `brake disc @ front right`", "line 4")


def test_a_reading_above_the_odometer_of_the_day_is_refused_where_it_stands(tmp_path: Path) -> None:
    text = f"""\
machine: {{kind: shaft_drive, odometer: 5000 km}}
{HEAD.splitlines()[1]}
observations:
  tyre @ front: {{fitted_at: 6000 km}}
"""
    one_fault(text, tmp_path, 4, 29, "`fitted_at` at 6000 km lies above", "5000 km")


def test_two_readings_of_the_odometer_must_agree(tmp_path: Path) -> None:
    text = (
        "machine: {kind: shaft_drive, odometer: 5000 km}\n"
        "inspection: {purpose: handover, date: 2026-05-01, odometer: 5001 km}\n"
    )
    one_fault(text, tmp_path, 2, 61, "`machine` says 5000 km, `inspection` says 5001 km")


def test_a_look_dated_after_the_inspection_is_refused(tmp_path: Path) -> None:
    body = "observations:\n  brake circuit @ front: {fluid_changed: 2026-05-02}\n"
    one_fault(HEAD + body, tmp_path, 4, 42, "future", "2026-05-01")


def test_a_photo_that_leaves_by_a_link_is_refused(tmp_path: Path) -> None:
    outside, folder = tmp_path / "elsewhere.jpg", tmp_path / "visit"
    folder.mkdir()
    outside.write_bytes(b"picture")
    (folder / "link.jpg").symlink_to(outside)
    (folder / "round.jpg").symlink_to(folder / "round.jpg")
    for name, words in (("link.jpg", "outside the folder"), ("round.jpg", "")):
        found = faults_in(f"{FRONT}    cracks: {{value: none, photo: {name}}}\n", folder)
        assert [(f.line, f.column) for f in found] == [(5, 34)]
        assert words in found[0].text


def test_a_control_character_from_an_escape_does_not_reach_the_terminal(tmp_path: Path) -> None:
    found = faults_in(f'{HEAD}observations:\n  "brake \\e[2Jpad": {{}}\n', tmp_path)
    assert len(found) == 1
    assert "\x1b" not in str(found[0])
    assert "�[2j" in str(found[0])


def test_a_missing_file_names_its_neighbour(tmp_path: Path) -> None:
    (tmp_path / "my_bike.yaml").write_text("a: b\n")
    found = faults_of(tmp_path / "my_bkie.yaml")
    assert "there is no such file" in found[0].text
    assert "my_bike.yaml`?" in found[0].text


def test_a_folder_is_no_record(tmp_path: Path) -> None:
    assert "this is a folder" in faults_of(tmp_path)[0].text


def test_a_name_no_file_can_have_is_refused(tmp_path: Path) -> None:
    assert "cannot be read" in faults_of(tmp_path / ("a" * 300))[0].text


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may read everything")
def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "record.yaml"
    path.write_text(HEAD)
    path.chmod(0)
    assert "no right to read" in faults_of(path)[0].text


def test_a_file_without_end_is_not_read_to_its_end() -> None:
    assert "2 MB" in faults_of(Path("/dev/zero"))[0].text
