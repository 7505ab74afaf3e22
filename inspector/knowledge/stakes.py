"""What it costs to act and to be wrong, in one dated table of judgements; it orders the looks that come next."""

from __future__ import annotations

from typing import Literal

from inspector.knowledge.model import Citation, Entry
from inspector.knowledge.observables import Eyes
from inspector.knowledge.rules import Effort

Troubled = Literal["minor", "major", "dangerous"]


class Finds(Entry):
    """How often a look finds a trouble that is there, and passes a part that is good."""

    sensitivity: float
    specificity: float


class Stakes(Entry):
    """Chances, losses and costs by class, effort and kind of look; money in oil services."""

    chance_hidden: dict[Troubled, float]
    loss_if_wrong: dict[Troubled, float]
    cost_to_act: dict[Effort, float]
    look_finds: dict[Eyes, Finds]
    sources: tuple[Citation, ...]
