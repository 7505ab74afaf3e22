"""What can be observed: the one list from which record, questions, sheet and schema are made."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import AfterValidator, Field, model_validator

from inspector.knowledge.derivations import FUNCTIONS
from inspector.knowledge.faults import not_allowed
from inspector.knowledge.model import Entry, Identifier, Text, Words, YesNo
from inspector.quantities.units import DIMENSIONS, Amount, parse_amount, parse_number

Kind = Literal["quantity", "count", "choice", "yes_no", "date", "odometer", "tyre_code", "text"]
Moment = Literal["viewing", "garage", "riding", "papers", "service"]
Eyes = Literal["obvious", "moderate", "subtle"]


def _function(name: str) -> str:
    if name not in FUNCTIONS:
        raise ValueError(not_allowed("the function", name, FUNCTIONS, most=30))
    return name


class Derivation(Entry):
    """How a derived property comes about; the functions are in `inspector/deriving`."""

    function: Annotated[Text, AfterValidator(_function)]
    of: Words
    from_: Text | None = Field(default=None, alias="from")


class Property(Entry):
    """One thing that can be observed of a part, or derived from what was observed."""

    kind: Kind
    dimension: Text | None = None
    plausible: Text | None = None
    choices: dict[Text, Text] = {}
    good: Words = ()
    moment: Moment = "viewing"
    after: tuple[Identifier, ...] = ()
    critical: YesNo = False
    optional: YesNo = False
    record_only: YesNo = False
    work: YesNo = False
    minutes: float = 0
    eyes: Eyes = "obvious"
    tools: tuple[Text, ...] = ()
    ask: Text | None = None
    look: Text | None = None
    means: Text | None = None
    cautions: tuple[Identifier, ...] = ()
    covers: tuple[Text, ...] = ()
    derive: Derivation | None = None

    @model_validator(mode="after")
    def _complete(self) -> Self:
        if self.kind == "quantity" and self.dimension not in DIMENSIONS:
            raise ValueError(f"`dimension` of a quantity is one of: {', '.join(DIMENSIONS)}")
        if self.derive is not None:
            if self.means is None:
                raise ValueError("a derived property needs `means`, one plain sentence")
            return self
        if self.ask is None or self.look is None:
            raise ValueError("`ask` and `look` say how a lay person finds out; one of them is missing")
        if (self.kind == "choice") != bool(self.choices):
            raise ValueError("`choices` belong to the kind choice, and only to it")
        if self.kind in ("quantity", "count"):
            if self.plausible is None:
                raise ValueError("`plausible` is missing, such as `0 mm to 15 mm`")
            self.plausible_range()
        if self.kind != "text" and not self.work and not self.good:
            raise ValueError("`good` is missing: what a machine in good order shows")
        return self

    def plausible_range(self) -> tuple[float, float]:
        """Least and greatest believable value in base units. Raises ValueError when it cannot be read."""
        low, word, high = (self.plausible or "").partition(" to ")
        if not word:
            raise ValueError(f"`plausible` is `{self.plausible}`; write it as `0 mm to 15 mm`")
        if self.kind == "count":
            return parse_number(low), parse_number(high)
        return self.amount(low).base, self.amount(high).base

    def amount(self, text: str) -> Amount:
        """Read an amount of this property's dimension."""
        assert self.dimension is not None
        return parse_amount(text, self.dimension)

    def words(self) -> tuple[str, ...]:
        """The words this property may hold, for the kinds that hold words."""
        if self.derive is not None and FUNCTIONS[self.derive.function].words:
            return FUNCTIONS[self.derive.function].words
        if self.kind == "yes_no":
            return ("yes", "no")
        if self.kind in ("date", "odometer"):
            return ("unknown",)
        return tuple(self.choices)

    @property
    def asked(self) -> bool:
        """Whether a person is asked for it (derived properties never are)."""
        return self.derive is None
