"""The command line: exit status, files, help without waiting, knowledge shown, schema, broken rules refused."""

from __future__ import annotations

import importlib.metadata
import json
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import click
import jsonschema
import pytest
from click.testing import CliRunner, Result

from inspector import assess, read
from inspector.cli import cli
from inspector.knowledge.faults import Faults
from inspector.knowledge.library import Loader, knowledge
from inspector.knowledge.yamlfile import decode, parse
from inspector.weighing.assessment import Assessment

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*/record.yaml"))
WORST_FIRST = ["stop", "repair", "plan", "watch"]
SMALL = """\
machine: {kind: shaft drive motorcycle}
inspection: {purpose: before purchase, date: 2026-05-01}
observations:
  tyre @ front: {cracks: none}
"""


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


@pytest.fixture
def small(tmp_path: Path) -> Path:
    path = tmp_path / "record.yaml"
    path.write_text(SMALL)
    return path


# exit status


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_the_exit_status_tells_whether_a_finding_is_at_the_level_asked_for(sample: Path) -> None:
    assessment = assess(read(sample))
    levels = {entry.level for entry in (*assessment.findings, *assessment.causes)}
    assert run("assess", sample).exit_code == 0
    for place, level in enumerate(WORST_FIRST):
        expected = 1 if levels & set(WORST_FIRST[: place + 1]) else 0
        assert run("assess", sample, "--fail-at", level).exit_code == expected


def test_a_machine_with_a_finding_that_says_stop_fails_at_every_level(small: Path) -> None:
    small.write_text(SMALL.replace("cracks: none", "damage: bulge"))
    assert [run("assess", small, "--fail-at", level).exit_code for level in WORST_FIRST] == [1, 1, 1, 1]


@pytest.mark.parametrize(
    "arguments",
    [
        ["assess"],
        ["assess", "no_such_file.yaml"],
        ["assess", "."],
        ["rules", "brakes/no_such_rule"],
        ["observable", "wings"],
        ["frobnicate"],
        ["assess", str(SAMPLES[0]), "--for", "nobody"],
        ["assess", str(SAMPLES[0]), "--fail-at", "always"],
    ],
)
def test_what_cannot_be_used_ends_with_two_and_a_message(arguments: list[str]) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stderr.strip()
    assert not result.stdout
    assert "Traceback" not in result.stderr


def test_all_faults_of_a_record_come_at_once_on_the_error_stream(tmp_path: Path) -> None:
    path = tmp_path / "record.yaml"
    path.write_text(SMALL.replace("none", "nothing").replace("before purchase", "holiday"))
    result = run("assess", path)
    assert result.exit_code == 2
    assert [line.split(": ")[0] for line in result.stderr.splitlines()] == [f"{path}:2:23", f"{path}:4:26"]


# the text


@pytest.mark.parametrize("width", [40, 61, 88, 120])
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_the_text_keeps_within_the_width_of_the_terminal(
    sample: Path, width: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    lines = run("assess", sample).stdout.splitlines()
    assert len(lines) > 10
    assert max(map(len, lines)) <= width


@pytest.mark.parametrize(
    "note", ["x" * 3900, "word " * 700, "صدأ خفيف على القرص " * 50, "a\\e[31m \\e]0;title\\a \\x9b2J \\u202e end"]
)
def test_no_note_breaks_the_layout_or_reaches_the_terminal_as_a_command(
    tmp_path: Path, note: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "60")
    path = tmp_path / "record.yaml"
    path.write_text(
        f'machine: {{kind: shaft_drive, name: "{note}"}}\n'
        f'inspection: {{purpose: handover, date: 2026-05-01, request: "{note}"}}\n'
        "observations:\n  brake caliper @ front left:\n"
        f'    drag: "not checked: {note}"\n    body: {{value: corroded, note: "{note}"}}\nremarks: ["{note}"]\n'
    )
    result = run("assess", path)
    assert result.exit_code == 0
    assert max(map(len, result.stdout.splitlines())) <= 60
    assert not re.search("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]", result.stdout)


@pytest.mark.parametrize("reader", ["buyer", "owner", "mechanic"])
def test_whoever_reads_it_the_findings_are_the_same(reader: str) -> None:
    sample = SAMPLES[0]
    labels = re.findall(r"^ +([A-Z]*\d+)\. ", run("assess", sample, "--for", reader).stdout, re.MULTILINE)
    assert labels
    assert labels == re.findall(r"^ +([A-Z]*\d+)\. ", run("assess", sample).stdout, re.MULTILINE)


# files


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_the_json_file_reads_back_as_the_same_assessment(sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "assessment.json"
    result = run("assess", sample, "--json", target)
    assert result.exit_code == 0
    assert f"Written: {target}" in result.stderr
    assert Assessment.model_validate_json(target.read_text()) == assess(read(sample))
    again = target.read_bytes()
    run("assess", sample, "--json", target)
    assert target.read_bytes() == again


@pytest.mark.parametrize("option", ["--json", "--pdf"])
def test_a_report_into_nowhere_is_refused_in_words(small: Path, tmp_path: Path, option: str) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "link").symlink_to(small)
    before = small.read_bytes()
    targets = ["missing/report", "folder", "record.yaml/report", "record.yaml", "link"]
    for target in targets if option == "--json" else targets[::4]:  # a PDF takes its time
        result = run("assess", small, option, tmp_path / target)
        assert result.exit_code == 2
        assert result.stderr.startswith(str(tmp_path / target) + ": ")
        assert "Traceback" not in result.stderr
    assert small.read_bytes() == before
    assert sorted(one.name for one in tmp_path.iterdir()) == ["folder", "link", "record.yaml"]


def test_no_file_is_written_for_a_record_that_cannot_be_read(small: Path, tmp_path: Path) -> None:
    small.write_text(SMALL.replace("none", "nothing"))
    assert run("assess", small, "--json", tmp_path / "a.json", "--pdf", tmp_path / "a.pdf").exit_code == 2
    assert [one.name for one in tmp_path.iterdir()] == ["record.yaml"]


# help


HEAVY = {"pydantic", "weasyprint", "pandas", "numpy", "durable", "scipy", "yaml", "jinja2"}
COMMANDS: list[list[str]] = [[], *([name] for name in sorted(cli.commands))]


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command[0] if command else "all")
def test_help_has_an_example_and_waits_for_no_library(command: list[str]) -> None:
    code = (
        "import sys\n"
        "from inspector.cli import cli\n"
        f"cli({[*command, '--help']!r}, prog_name='inspector', standalone_mode=False)\n"
        "print('MODULES', *{name.partition('.')[0] for name in sys.modules})\n"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    text, _, modules = done.stdout.partition("MODULES")
    assert "Example: inspector" in " ".join(text.split())
    assert max(map(len, text.splitlines())) <= 100
    assert not HEAVY & set(modules.split())


def test_every_option_is_explained() -> None:
    for command in cli.commands.values():
        for parameter in command.params:
            if isinstance(parameter, click.Option):
                assert parameter.help, f"{command.name} {parameter.name}"


def test_the_version_is_told() -> None:
    try:
        importlib.metadata.version("inspector")
    except importlib.metadata.PackageNotFoundError:
        pytest.skip("run from a clone that is not installed")
    result = run("--version")
    assert result.exit_code == 0
    assert re.fullmatch(r"inspector \d+\.\d+\.\d+\s*", result.stdout)


# knowledge shown


def test_every_rule_is_listed_and_one_is_told_in_full() -> None:
    listed = run("rules")
    assert listed.exit_code == 0
    assert all(identity in listed.stdout for identity in knowledge().rules)
    told = run("rules", "brakes/pad_below_limit").stdout
    rule = knowledge().rules["brakes/pad_below_limit"]
    assert rule.title in told
    sources = " ".join(told.split())
    assert all(knowledge().sources[one.source].title in sources for one in rule.sources)


def test_a_rule_misspelt_brings_the_nearest() -> None:
    assert "Did you mean `brakes/pad_below_limit`?" in run("rules", "brakes/pad_below_limt").stderr


def test_rules_as_json_are_all_there() -> None:
    every = json.loads(run("rules", "--json").stdout)
    assert set(every) == set(knowledge().rules)
    one = json.loads(run("rules", "brakes/pad_below_limit", "--json").stdout)
    assert one == every["brakes/pad_below_limit"]
    assert one["title"] == knowledge().rules["brakes/pad_below_limit"].title


@pytest.mark.parametrize("part", ["brake pad", "Brake_Pad", "final drive"])
def test_a_part_is_told_with_its_questions_and_choices(part: str) -> None:
    told = " ".join(run("observable", part).stdout.split())
    entries = knowledge().properties[part.lower().replace("_", " ")]
    for name, entry in entries.items():
        if entry.asked:
            assert name.replace("_", " ").capitalize() in told
            assert " ".join(str(entry.ask).split())[:30] in told
            assert all(choice in told for choice in entry.choices)


def test_the_parts_are_listed_as_text_and_as_json() -> None:
    text, data = run("observable").stdout, json.loads(run("observable", "--json").stdout)
    assert set(data) == set(knowledge().properties)
    assert all(part in text for part in data)


# schema


@pytest.fixture(scope="module")
def validator() -> Any:
    schema = json.loads(run("schema").stdout)
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    return kind(schema)


def plain(path: Path) -> Any:
    return parse(decode(path.read_bytes(), path.name), path.name).data


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_the_schema_takes_every_sample(validator: Any, sample: Path) -> None:
    faults = [f"{list(one.path)}: {one.message[:200]}" for one in validator.iter_errors(plain(sample))]
    assert not faults


@pytest.mark.parametrize(
    ("section", "change"),
    [
        ("observations", {"tyre @ front": {"cracks": "fin"}}),
        ("observations", {"tyre @ front": {"craks": "fine"}}),
        ("observations", {"tyre @ middle": {"cracks": "fine"}}),
        ("observations", {"tyre": {"cracks": "fine"}}),
        ("observations", {"tire @ front": {"cracks": "fine"}}),
        ("observations", {"tyre @ front": {"cracks": {"value": "fine", "nots": "x"}}}),
        ("observations", {"tyre @ front": "good"}),
        ("observations", {"tyre @ front": ["cracks"]}),
        ("inspection", {"purpose": "holiday", "date": "2026-05-01"}),
        ("inspection", {"purpose": "handover"}),
        ("inspection", {"purpose": "handover", "date": "1.5.2026"}),
        ("machine", {"kind": "hovercraft"}),
        ("machine", {"name": "the blue one"}),
        ("limits", {"wing": {"span": "at most 3 m"}}),
        ("invented", "perhaps"),
        ("colour", "blue"),
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(
    validator: Any, tmp_path: Path, section: str, change: Any
) -> None:
    record = plain(SAMPLES[0])
    assert validator.is_valid(record)
    record = {**record, section: change}
    assert not validator.is_valid(record)
    path = tmp_path / "record.json"
    path.write_text(json.dumps(record))
    with pytest.raises(Faults):
        read(path)


@pytest.mark.parametrize(
    "looks",
    [
        "not checked: no stand",
        {"not checked": "no stand"},
        {"cracks": "fine", "rotation_right": True, "rotation right": "yes"},
        {"cracks": {"value": "fine", "note": "left"}, "tread_left": "3 mm with caliper"},
        {"cracks": {"could not see": None}, "date_code": 1219},
    ],
)
def test_the_schema_takes_every_way_to_write_a_look(validator: Any, looks: Any) -> None:
    record = {**plain(SAMPLES[0]), "observations": {"tyre @ front": looks}}
    assert validator.is_valid(record)


# rules broken on purpose


PAD = "findings/brakes/pad_below_limit.yaml"
BROKEN = [
    ("heading misspelt", PAD, r"^title:", "titel:", 1, "Did you mean `title`?"),
    ("heading forgotten", PAD, r"^certainty:.*\n", "", 1, "`certainty` is missing"),
    ("unknown part", PAD, r"^about: .*", "about: brake pd", 2, "Did you mean `brake pad`?"),
    ("text that is a list", PAD, r"^about: .*", "about: [brake pad]", 2, "must be a text, found a list"),
    ("word that is none", PAD, r"^certainty: .*", "certainty: sure", None, "`certainty`: the word `sure`"),
    ("class that is none", PAD, r"^class: .*", "class: deadly", None, "`class`: the word `deadly`"),
    ("limit that is none", PAD, r"beyond: wear limit", "beyond: wear limt", None, "Did you mean `wear limit`?"),
    (
        "property that is none",
        PAD,
        r"friction_material_thickness: \{beyond",
        "thickness: {beyond",
        None,
        "property",
    ),
    ("source that is none", PAD, r"source: \w+", "source: hearsay", None, "the source `hearsay` is not known"),
    ("caution that is none", PAD, r"^cautions: .*", "cautions: [dragons]", None, "the caution `dragons`"),
    ("severity that is none", PAD, r"severity: \d", "severity: 9", None, "`severity`: the word `9`"),
    ("placeholder that is none", PAD, r"\{place\}", "{pace}", None, "the placeholder `pace`"),
    ("title too long", PAD, r"^title: .*", f"title: {'long ' * 20}", 1, "at most 60"),
    ("no story of harm", PAD, r"(?s)\Z", "due: yes\n", 1, "`due` goes only with"),
    ("broken YAML", PAD, r"^title: .*", 'title: "open', 1, "no closing"),
    ("same heading twice", PAD, r"\A", "title: a\n", 2, "`title` stands in line 1 already"),
    ("tool that is no table", "tools.yaml", r"(?s).*", "caliper: 3\n", 1, "must be headings"),
    ("file that is a list", "cautions.yaml", r"(?s).*", "- a\n", 1, "must have headings"),
    ("file that is empty", "sources.yaml", r"(?s).*", "", 1, "empty"),
    ("kind of machine above that is none", "machines/shaft_drive.yaml", "is_a: .*", "is_a: boat", 3, "boat"),
    ("endless number", "observable/brakes.yaml", r"minutes: \d+", "minutes: nan", None, "must be a number"),
]


def _other_systems(folder: str, names: list[str]) -> list[str]:
    """The findings of other systems: loading them all for every case takes its time."""
    return [name for name in names if name != "brakes"] if Path(folder).name == "findings" else []


@pytest.mark.parametrize(
    ("file", "found", "instead", "line", "reason"), [b[1:] for b in BROKEN], ids=[b[0] for b in BROKEN]
)
def test_a_broken_rule_file_is_refused_with_file_line_and_reason(
    tmp_path: Path, file: str, found: str, instead: str, line: int | None, reason: str
) -> None:
    folder = tmp_path / "rules"
    shutil.copytree(ROOT / "rules", folder, ignore=_other_systems)
    text = (folder / file).read_text()
    broken = re.sub(found, lambda match: instead, text, count=1, flags=re.MULTILINE)
    assert broken != text
    (folder / file).write_text(broken)
    with pytest.raises(Faults) as refused:
        Loader(folder).load()
    mine = [fault for fault in refused.value.faults if fault.file == f"rules/{file}" and reason in fault.text]
    assert mine, "\n".join(map(str, refused.value.faults[:5]))
    lines = zip([*broken.splitlines(), ""], [*text.splitlines(), ""], strict=False)
    changed = next(number for number, (new, old) in enumerate(lines, 1) if new != old)
    assert mine[0].line == (line or changed)
    assert not re.search("pydantic|Input should|NoneType|class_", str(mine[0]))


def test_an_unbroken_copy_of_the_rules_loads(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "rules", tmp_path / "rules")
    assert set(Loader(tmp_path / "rules").load().rules) == set(knowledge().rules)
