"""The pitted share of the splines in the words of published grades."""

from __future__ import annotations

import pytest

from inspector.quantities.grades import rust_phrases, rust_words
from tests.deriving.looks import sentences

SPLINES = "splines @ rear wheel side"


@pytest.mark.parametrize(("share", "d610", "ri"), [("2 %", 5, 3), ("12 %", 3, 4), ("0.2 %", 7, 2)])
def test_the_grade_stands_in_the_finding(share: str, d610: int, ri: int) -> None:
    """ASTM D610-08 (2019) and ISO 4628-3:2016, cut half way between its pictures."""
    says = sentences({SPLINES: {"rust": "pits", "rust_area": share}})["shaft_and_splines/rust_share_graded"]

    assert f"grade {d610} of ASTM D610, Ri {ri} of ISO 4628-3" in says


def test_every_phrase_is_on_the_list_the_knowledge_knows() -> None:
    assert {rust_words(step / 100) for step in range(10001)} <= set(rust_phrases())
