"""The parts of an assessment about what comes next and what it may cost."""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """Base of all parts of an assessment: frozen, nothing extra."""

    model_config = ConfigDict(frozen=True, extra="forbid", json_schema_serialization_defaults_required=True)


DueKind = Literal["work", "measure again", "gently until"]
First = Literal["date", "distance", "whichever comes first"]


class DueEntry(Part):
    """What comes next: at a reading of the distance counter, on a day, whichever is reached first.

    `expected` is the month in which the distance is ridden at the pace of so far; `between` are the readings
    between which the limit of wear is probably reached.
    """

    part: str
    place: str
    what: str
    kind: DueKind
    step: str | None
    by: Literal["owner", "licensed mechanic"] | None
    limit: str | None
    limit_origin: str | None
    at: str | None
    on: str | None
    expected: str | None
    first: First | None
    between: tuple[str, ...] = ()
    overdue: bool


class CostLine(Part):
    """What one piece of work may cost, and the findings it is for."""

    labels: tuple[str, ...]
    title: str
    part: str
    place: str
    effort: str
    priced_by: Literal["rule", "size of job"]
    low: float
    high: float


class Asking(Part):
    """The price asked, and what is left of it after the work."""

    typed: str
    currency: str
    low: float | None
    high: float | None


class Costs(Part):
    """What was found may cost to put right, by the prices of the user's own file.

    `low` and `high` are rounded outward; the true sum lies between them with about eight in ten, as far as the
    prices are right. Suspected causes are listed and not in the sum.
    """

    currency: str
    priced_on: str
    invented: bool
    low: float
    high: float
    lines: tuple[CostLine, ...]
    suspected: tuple[CostLine, ...]
    without_price: tuple[str, ...]
    not_looked_at: int
    asking: Asking | None
