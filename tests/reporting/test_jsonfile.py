"""The published schema of the assessment: what the program writes keeps to it, and a changed file does not."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from click.testing import CliRunner
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.cli import cli
from inspector.knowledge.library import knowledge
from inspector.quantities.money import parse_money
from inspector.reading.prices import read_prices
from inspector.reporting.jsonfile import assessment_schema, write_json
from inspector.weighing.assessment import Assessment
from inspector.weighing.costing import with_costs
from tests.reporting.cases import hostile, in_order, nearly_empty, worn

ROOT = Path(__file__).resolve().parents[2]
CASES = {"worn": worn, "nearly empty": nearly_empty, "in order": in_order, "hostile": hostile}


def checker() -> jsonschema.Draft202012Validator:
    jsonschema.Draft202012Validator.check_schema(assessment_schema())
    return jsonschema.Draft202012Validator(assessment_schema())


def priced() -> Assessment:
    prices, _ = read_prices(ROOT / "samples" / "prices.yaml", knowledge())
    return with_costs(worn(), prices, parse_money("3 200 EUR"))


@pytest.mark.parametrize("case", [*CASES, "priced"])
def test_what_is_written_keeps_to_the_schema_and_reads_back_the_same(case: str, tmp_path: Path) -> None:
    assessment = priced() if case == "priced" else CASES[case]()
    write_json(assessment, tmp_path / "a.json")
    raw = (tmp_path / "a.json").read_text(encoding="utf-8")

    checker().validate(json.loads(raw))
    assert Assessment.model_validate_json(raw) == assessment


def test_the_command_prints_the_schema() -> None:
    result = CliRunner().invoke(cli, ["schema", "--assessment"], catch_exceptions=False)

    assert result.exit_code == 0
    assert json.loads(result.output) == assessment_schema()


@given(st.sampled_from(sorted(Assessment.model_fields)), st.sampled_from([7, "word", [{"no": "heading"}]]))
@settings(deadline=None, max_examples=20)
def test_a_heading_left_out_or_of_another_kind_is_refused(name: str, wrong: Any) -> None:
    data = json.loads(worn().model_dump_json())
    if type(data[name]) is not type(wrong):
        assert not checker().is_valid({**data, name: wrong})
    del data[name]
    assert not checker().is_valid(data)
    assert not checker().is_valid({**json.loads(worn().model_dump_json()), "score": 80})
