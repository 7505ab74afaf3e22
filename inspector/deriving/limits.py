"""The limit that applies to a quantity here, where it comes from, and how the reading stands to it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from inspector.deriving.amounts import Derived
from inspector.knowledge.library import Knowledge
from inspector.knowledge.limits import Bounds, Limit
from inspector.knowledge.machines import contains
from inspector.knowledge.observables import Property
from inspector.quantities.conformity import chance_beyond, outcome_of
from inspector.quantities.units import Amount, base_unit, convert, number_text, parse_amount, parse_number
from inspector.reading.inspection import Counted, Inspection, Measured, OwnLimit

Standing = Literal["within", "beyond", "cannot tell", "not known"]


@dataclass(frozen=True)
class Band:
    """A limit resolved for one place: bounds in base units, as text, and their origin."""

    at_least: float | None
    at_most: float | None
    text: str
    origin: str

    @property
    def words(self) -> str:
        """The limit with its sense: `at least 1.5 mm`, `at most 0.3 mm`, `2 mm to 4 mm`."""
        if self.at_least is not None and self.at_most is not None:
            return self.text
        return f"at least {self.text}" if self.at_least is not None else f"at most {self.text}"


@dataclass(frozen=True)
class Applied:
    """How one reading stands to one limit; `reaches` when it goes beyond by the end of the horizon."""

    name: str
    standing: Standing
    band: Band | None = None
    chance: float | None = None
    reaches: bool = False


def apply_limits(
    found: Derived,
    part: str,
    place: str,
    name: str,
    knowledge: Knowledge,
    inspection: Inspection,
    words: dict[str, str],
) -> dict[str, Applied]:
    """Every named limit of a property, applied to its value."""
    if not isinstance(found.value, Measured | Counted):
        return {}
    limits = knowledge.limits_of(part, name)
    if not limits:
        return {}
    prop = knowledge.properties[part][name]
    resolver = _Resolver(prop, limits, _own_limit(part, place, name, inspection), inspection, words)
    return {limit: _apply(limit, limits[limit], resolver.band(limit), found, prop, inspection) for limit in limits}


def limit_here(
    part: str, place: str, name: str, limit: str, knowledge: Knowledge, inspection: Inspection
) -> Band | None:
    """One named limit of a quantity, where it does not hang on a choice; None when nobody knows it."""
    own = _own_limit(part, place, name, inspection)
    limits = knowledge.limits_of(part, name)
    return _Resolver(knowledge.properties[part][name], limits, own, inspection, {}).band(limit)


def _own_limit(part: str, place: str, name: str, inspection: Inspection) -> OwnLimit | None:
    fitting = [
        own
        for own in inspection.limits
        if own.part == part and own.name == name and (own.place is None or contains(own.place, place))
    ]
    return max(fitting, key=lambda own: len(own.place or ""), default=None)


class _Resolver:
    def __init__(
        self,
        prop: Property,
        limits: Mapping[str, Limit],
        own: OwnLimit | None,
        inspection: Inspection,
        words: dict[str, str],
    ) -> None:
        self.prop = prop
        self.limits = limits
        self.own = own
        self.inspection = inspection
        self.words = words

    def band(self, name: str) -> Band | None:
        """Bounds and origin of the limit `name` here; None when nobody knows it."""
        limit = self.limits[name]
        if limit.given_by_machine and self.own is not None:
            bounds = (self._base(self.own.at_least), self._base(self.own.at_most))
            texts = [str(a) if a else None for a in (self.own.at_least, self.own.at_most)]
            return Band(*bounds, _text(*texts), self.own.origin)
        if limit.below is not None or limit.above is not None:
            return self._offset(limit)
        case = self._case(limit)
        if case.at_least is None and case.at_most is None:
            return None
        origin = limit.origin
        if case is not limit and limit.by == "country":
            origin = f"{origin}, {self.inspection.country}"
        return Band(
            self._number(case.at_least),
            self._number(case.at_most),
            _text(case.at_least, case.at_most),
            origin,
        )

    def _case(self, limit: Limit) -> Bounds:
        if limit.by is None:
            return limit
        word = self.inspection.country if limit.by == "country" else self.words.get(limit.by)
        return limit.cases.get(word or "", limit)

    def _offset(self, limit: Limit) -> Band | None:
        offset = limit.below or limit.above
        assert offset is not None
        base = self.band(offset.limit)
        if base is None:
            return None
        by = self._number(offset.by)
        assert by is not None
        sign = -1 if limit.below is not None else 1
        least, most = (None if bound is None else bound + sign * by for bound in (base.at_least, base.at_most))
        side = "below" if limit.below is not None else "above"
        return Band(least, most, f"{offset.by} {side} the limit of {base.text}", base.origin)

    def _number(self, text: str | None) -> float | None:
        if text is None:
            return None
        return (
            parse_number(text) if self.prop.kind == "count" else parse_amount(text, str(self.prop.dimension)).base
        )

    @staticmethod
    def _base(amount: Amount | None) -> float | None:
        return None if amount is None else amount.base


def _text(least: str | None, most: str | None) -> str:
    return f"{least} to {most}" if least and most else (least or most or "")


def _apply(
    name: str, limit: Limit, band: Band | None, found: Derived, prop: Property, inspection: Inspection
) -> Applied:
    if band is None:
        return Applied(name, "not known")
    value, spread = _reading(found)
    chance = float(chance_beyond(value, spread, band.at_least, band.at_most))
    standing: Standing = outcome_of(chance, limit.act_over_loss)
    if standing == "within" and found.partial:
        standing = "cannot tell"  # a look that was not made may be the worst one
    growth = _growth(prop, inspection)
    reaches = bool(growth) and standing == "within" and _beyond_at(value + growth, band)
    return Applied(name, standing, _in_typed_unit(band, found, prop), chance, reaches)


def _beyond_at(later: float, band: Band) -> bool:
    return chance_beyond(later, 0.0, band.at_least, band.at_most) > 0


def _reading(found: Derived) -> tuple[float, float]:
    if isinstance(found.value, Counted):
        return float(found.value.number), 0.0
    assert isinstance(found.value, Measured)
    return found.value.amount.base, found.value.uncertainty


def _growth(prop: Property, inspection: Inspection) -> float:
    function = prop.derive.function if prop.derive else None
    if function == "age":
        return inspection.horizon_months
    return inspection.horizon_km if function == "travelled" else 0.0


def _in_typed_unit(band: Band, found: Derived, prop: Property) -> Band:
    """Add the limit in the unit that the person typed, when it is written in another."""
    if not isinstance(found.value, Measured) or found.value.amount.unit in band.text:
        return band
    unit, dimension = found.value.amount.unit, str(prop.dimension)
    if dimension == "time" or (band.at_least is not None and band.at_most is not None):
        return band
    base = band.at_least if band.at_least is not None else band.at_most
    assert base is not None
    number = number_text(convert(base, base_unit(dimension), unit, dimension), 2)
    return Band(band.at_least, band.at_most, f"{band.text} ({number} {unit})", band.origin)
