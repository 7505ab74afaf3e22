"""The steps from an inspection to an assessment, as the commands call them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.cli.common import UNUSABLE, input_faults, refuse_targets, stop

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge
    from inspector.reading.inspection import Inspection
    from inspector.reading.prices import Prices
    from inspector.weighing.assessment import Assessment


@dataclass(frozen=True)
class Priced:
    """A price file, read, with its name and text."""

    prices: Prices
    name: str
    text: str


def priced(path: Path, known: Knowledge, targets: list[Path | None]) -> Priced:
    """Read a price file; exits with 2 when it cannot be used or would be written over."""
    from inspector.reading.prices import read_prices

    refuse_targets(path, *targets)
    with input_faults():
        prices, text = read_prices(path, known)
    return Priced(prices, path.name, text)


def judged(inspection: Inspection, known: Knowledge, prices: Priced | None = None) -> Assessment:
    """Derive, judge and weigh, with costs when there are prices.

    Exits with 3 when the engine fails, with 2 when the rules are more than it can bear.
    """
    from inspector.deriving.facts import derive_facts
    from inspector.judging.engine import RuleError
    from inspector.judging.judge import judge
    from inspector.weighing.costing import with_costs
    from inspector.weighing.weigh import weigh

    try:
        with input_faults(UNUSABLE):  # the rules are checked for the engine when it is made
            judgement = judge(derive_facts(inspection, known), known)
        assessment = weigh(judgement, known)
        return with_costs(assessment, prices.prices, inspection.asking_price) if prices else assessment
    except RuleError as error:
        stop(f"The rule engine failed; this is a fault of the tool, not of your record. {error}", 3)
