"""Named limits of quantities, where each comes from, and what other sources say."""

from __future__ import annotations

from typing import Self

from pydantic import model_validator

from inspector.knowledge.model import Citation, Entry, Text, YesNo


class Bounds(Entry):
    """The least and the greatest value that are still within."""

    at_least: Text | None = None
    at_most: Text | None = None


class Offset(Entry):
    """So much below (or above) another limit of the same property."""

    limit: Text
    by: Text


class Limit(Bounds):
    """A limit by name; without a figure it is known only when the stamp or the manual gives one."""

    given_by_machine: YesNo = False
    by: Text | None = None
    cases: dict[Text, Bounds] = {}
    below: Offset | None = None
    above: Offset | None = None
    origin: Text
    act_over_loss: float = 0.05
    sources: tuple[Citation, ...]
    others_say: tuple[Citation, ...] = ()

    @model_validator(mode="after")
    def _complete(self) -> Self:
        if not self.sources:
            raise ValueError("a limit needs a source; `own_choice` with its reason is one")
        if bool(self.by) != bool(self.cases):
            raise ValueError("`by` and `cases` go together")
        if not 0 < self.act_over_loss <= 0.5:
            raise ValueError("`act_over_loss` lies between 0 and 0.5")
        figures = (self.at_least, self.at_most, self.below, self.above, self.by)
        if not self.given_by_machine and not any(figures):
            raise ValueError("this limit has no figure and the machine does not give one")
        return self
