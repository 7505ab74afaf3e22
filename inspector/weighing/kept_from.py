"""What a reading would have to show, read as well as this one was, to be taken as within its limit."""

from __future__ import annotations

import math

from inspector.deriving.facts import Fact
from inspector.deriving.limits import Applied
from inspector.knowledge.library import Knowledge
from inspector.knowledge.wording import words
from inspector.quantities.conformity import guard_band
from inspector.quantities.units import number_text
from inspector.reading.inspection import Measured
from inspector.reading.values import in_unit


def kept_from(fact: Fact, knowledge: Knowledge) -> str | None:
    """`read this well, it counts as kept from 1.9 mm on`; None for a reading that decides, and for a band."""
    undecided = [one for one in fact.limits.values() if one.standing == "cannot tell" and one.band is not None]
    if not undecided or not isinstance(fact.value, Measured) or not fact.value.uncertainty or fact.partial:
        return None
    limit = max(undecided, key=lambda one: knowledge.limit_weights.get((fact.part, fact.name, one.name), 0))
    return _words(fact.value, limit, knowledge.limits_of(fact.part, fact.name)[limit.name].act_over_loss)


def _words(value: Measured, limit: Applied, act_over_loss: float) -> str | None:
    assert limit.band is not None
    low, high = limit.band.at_least, limit.band.at_most
    room, unit = guard_band(value.uncertainty, act_over_loss), value.amount.unit
    spread = abs(in_unit(value.uncertainty, value.amount))
    step = 10.0 ** math.floor(math.log10(spread) + 1e-9)  # no finer than the reading itself
    if low is not None and high is None:
        edge = math.ceil(in_unit(low + room, value.amount) / step - 1e-9) * step
        return str(words()["forecast"]["kept_from"].format(edge=number_text(round(edge, 9)), unit=unit))
    if high is not None and low is None:
        edge = math.floor(in_unit(high - room, value.amount) / step + 1e-9) * step
        return str(words()["forecast"]["kept_up_to"].format(edge=number_text(round(edge, 9)), unit=unit))
    return None
