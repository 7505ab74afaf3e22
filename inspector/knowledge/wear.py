"""How fast parts wear before anybody knows this one: prior rates, all judgement, in one dated table."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from inspector.knowledge.model import Citation, Entry, Text


class WearPrior(Entry):
    """The prior of one property: rate per 1000 km, how unsure it is, what a new part shows.

    `factor` holds at 95 % either way; `jitter` is the variance added per 1000 km; `check_at` the chance of
    being at the limit at which the next look is due. `limit_of` names another property of the part that the
    limit belongs to, when the readings themselves carry none. `readings` names the measured property that a
    derived one is worked out from: each earlier reading of it gives an earlier value.
    """

    limit: Text
    limit_of: Text | None = None
    readings: Text | None = None
    sense: Literal["falls", "grows"] = "falls"
    per_1000_km: Text
    factor: float
    jitter: Text
    new: Text
    new_spread: Text
    check_at: Text
    sources: tuple[Citation, ...]

    @model_validator(mode="after")
    def _believable(self) -> Self:
        if not 1 < self.factor <= 10:
            raise ValueError("`factor` lies between 1 and 10")
        if not self.sources:
            raise ValueError("a prior rate needs a source; `own_choice` with its reason is one")
        return self
