"""The steps from an inspection to an assessment, as the commands call them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.cli.common import stop

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge
    from inspector.reading.inspection import Inspection
    from inspector.weighing.assessment import Assessment


def judged(inspection: Inspection, known: Knowledge) -> Assessment:
    """Derive, judge and weigh; exits with 3 when the engine fails."""
    from inspector.deriving.facts import derive_facts
    from inspector.judging.engine import RuleError
    from inspector.judging.judge import judge
    from inspector.weighing.weigh import weigh

    try:
        return weigh(judge(derive_facts(inspection, known), known), known)
    except RuleError as error:
        stop(f"The rule engine failed; this is a fault of the tool, not of your record. {error}", 3)
