"""The functions that observables may be derived with. Each turns looks into one value with its uncertainty."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from typing import TYPE_CHECKING, Protocol

from inspector.deriving.amounts import DOES_NOT_APPLY, NOT_LOOKED_AT, Derived, Key, Looks, worked_out
from inspector.deriving.named import NAMED
from inspector.knowledge.derivations import FUNCTIONS
from inspector.knowledge.kept import once
from inspector.knowledge.machines import contains
from inspector.knowledge.observables import Property
from inspector.quantities.fluids import fluid_match
from inspector.quantities.readings import uncertainty_of_difference
from inspector.quantities.torque_slip import unit_slip
from inspector.quantities.tyres import tyre_date
from inspector.quantities.units import Amount
from inspector.reading.inspection import Day, Earlier, Inspection, Measured, Silent, TyreCode, Value, Word

if TYPE_CHECKING:
    from inspector.deriving.forecast import Forecast
    from inspector.knowledge.library import Knowledge
    from inspector.knowledge.machines import Machine

_DAYS_A_MONTH = 365.2425 / 12


class Values(Protocol):
    """What a derivation may ask for."""

    inspection: Inspection
    known: Knowledge
    machine: Machine

    def value(self, part: str, place: str, name: str) -> Derived:
        """The value of a property at a place."""
        ...

    def earlier(self, part: str, place: str, name: str) -> tuple[Earlier, ...]:
        """What a property showed before."""
        ...

    def forecast(self, part: str, place: str, name: str) -> Forecast | None:
        """How a property wears towards its limit."""
        ...


def derive(
    values: Values, part: str, place: str, name: str, *, instead: Mapping[Key, Derived] | None = None
) -> Derived:
    """Value of the derived property `name` of `part` at `place`; `instead`: looks in the place of today's."""
    prop = values.known.properties[part][name]
    assert prop.derive is not None
    if prop.derive.function == "wear_story":
        return _wear_story(values, part, place, prop.derive.of[0])
    inputs = _inputs(values.known, values.machine.id, part, place, name)
    replaced = instead or {}
    found = {key: replaced.get(key) or values.value(*key) for key in inputs}
    applying = {k: d for k, d in found.items() if not _does_not_apply(d.value)}
    function = prop.derive.function
    if len(applying) < FUNCTIONS[function].needs:
        return Derived(DOES_NOT_APPLY, inputs)
    if FUNCTIONS[function].named:  # it says itself which of its looks it can do without
        return Derived(NAMED[function](Looks(applying, values.inspection)), tuple(applying))
    value = POSITIONAL[function](values.inspection, list(applying.values()), prop)
    silent = [d for d in applying.values() if isinstance(d.value, Silent) or d.partial]
    return Derived(value, tuple(applying), partial=bool(silent))


def _wear_story(values: Values, part: str, place: str, name: str) -> Derived:
    if not values.earlier(part, place, name):
        # no look of today can show more without a history, so nothing about it is open
        return Derived(Word("one reading"), ((part, place, name),))
    ahead = values.forecast(part, place, name)
    source = values.value(part, place, name)
    if ahead is None:
        return Derived(source.value if isinstance(source.value, Silent) else NOT_LOOKED_AT, ((part, place, name),))
    return Derived(Word(ahead.story), ((part, place, name),))


@once
def _inputs(knowledge: Knowledge, kind: str, part: str, place: str, name: str) -> tuple[Key, ...]:
    """The looks that a derived property asks for on a machine of this kind."""
    derivation = knowledge.properties[part][name].derive
    assert derivation is not None
    addresses = (*derivation.of, *((derivation.from_,) if derivation.from_ is not None else ()))
    machine = knowledge.machines[kind]
    return tuple(key for address in addresses for key in _keys(machine, part, place, address))


def _keys(machine: Machine, part: str, place: str, address: str) -> list[Key]:
    other, _, name = address.rpartition(" ")
    if not other:
        return [(part, place, name)]
    places = machine.parts.get(other, ())
    inside = [there for there in places if contains(place, there)]
    return [(other, there, name) for there in inside or [one for one in places if contains(one, place)]]


def _does_not_apply(value: Value | Silent) -> bool:
    return isinstance(value, Silent) and value.state == "does not apply"


def _measured(inputs: list[Derived]) -> list[Measured]:
    return [d.value for d in inputs if isinstance(d.value, Measured)]


def _like(pattern: Measured, base: float, uncertainty: float) -> Measured:
    """A derived amount written in the unit of one of its inputs."""
    amount = pattern.amount
    unit = amount.unit
    if amount.dimension == "temperature":
        return worked_out(base, "temperature difference", unit, uncertainty)
    return worked_out(base, amount.dimension, unit, uncertainty)


def _apart(one: Measured, other: Measured) -> float:
    """Uncertainty of a difference; what one named tool is off by in both readings drops out."""
    same_tool = one.tool is not None and one.tool == other.tool
    return uncertainty_of_difference(one.uncertainty, other.uncertainty, same_tool=same_tool)


def _spread(inspection: Inspection, inputs: list[Derived], prop: Property) -> Measured | Silent:
    found = sorted(_measured(inputs), key=lambda m: m.amount.base)
    if len(found) < 2:
        return NOT_LOOKED_AT
    low, high = found[0], found[-1]
    return _like(low, high.amount.base - low.amount.base, _apart(low, high))


def _least(inspection: Inspection, inputs: list[Derived], prop: Property) -> Measured | Silent:
    return min(_measured(inputs), key=lambda m: m.amount.base, default=NOT_LOOKED_AT)


def _greatest(inspection: Inspection, inputs: list[Derived], prop: Property) -> Measured | Silent:
    return max(_measured(inputs), key=lambda m: m.amount.base, default=NOT_LOOKED_AT)


def _months(then: date, now: date) -> Measured:
    months = (now - then).days / _DAYS_A_MONTH
    typed = f"{months:.0f} months" if months < 36 else f"{months / 12:.0f} years"
    return Measured(Amount(typed, months, "months", "time", months), 0.0, None, stated=True)


def _age(inspection: Inspection, inputs: list[Derived], prop: Property) -> Value | Silent:
    match inputs[0].value:
        case Day(day):
            return _months(day, inspection.day)
        case TyreCode(code):
            return _months(tyre_date(code, inspection.day).latest, inspection.day)
        case Word() as unknown:
            return unknown
        case _:
            return NOT_LOOKED_AT


def _digits(inspection: Inspection, inputs: list[Derived], prop: Property) -> Value | Silent:
    value = inputs[0].value
    return Word(tyre_date(value.code, inspection.day).digits) if isinstance(value, TyreCode) else NOT_LOOKED_AT


def _travelled(inspection: Inspection, inputs: list[Derived], prop: Property) -> Value | Silent:
    value = inputs[0].value
    if isinstance(value, Word):
        return value
    if inspection.odometer is None or not isinstance(value, Measured):
        return NOT_LOOKED_AT
    return worked_out(inspection.odometer.base - value.amount.base, "distance", inspection.odometer.unit, 0.0)


def _pair(inputs: list[Derived]) -> tuple[Measured, Measured] | None:
    found = _measured(inputs)
    return (found[0], found[1]) if len(found) == 2 else None


def _deviation(inspection: Inspection, inputs: list[Derived], prop: Property) -> Measured | Silent:
    pair = _pair(inputs)
    if pair is None or pair[1].amount.base == 0:
        return NOT_LOOKED_AT
    of, wanted = pair
    # the wanted figure is printed somewhere and exact; only the reading is uncertain
    scale = 100 / abs(wanted.amount.base)
    return worked_out((of.amount.base - wanted.amount.base) * scale, "percent", "%", of.uncertainty * scale)


def _difference(inspection: Inspection, inputs: list[Derived], prop: Property) -> Measured | Silent:
    pair = _pair(inputs)
    if pair is None:
        return NOT_LOOKED_AT
    of, start = pair
    return _like(of, of.amount.base - start.amount.base, _apart(of, start))


def _fluid_match(inspection: Inspection, inputs: list[Derived], prop: Property) -> Word | Silent:
    words = [d.value.word for d in inputs if isinstance(d.value, Word)]
    if len(words) < 2:
        return NOT_LOOKED_AT
    return Word(fluid_match(*words))


def _unit_slip(inspection: Inspection, inputs: list[Derived], prop: Property) -> Word | Silent:
    pair = _pair(inputs)
    if pair is None or min(one.amount.base for one in pair) <= 0:
        return NOT_LOOKED_AT
    return Word(unit_slip(pair[0].amount.base, pair[1].amount.base))


POSITIONAL: dict[str, Callable[[Inspection, list[Derived], Property], Value | Silent]] = {
    "spread": _spread,
    "least": _least,
    "greatest": _greatest,
    "age": _age,
    "digits": _digits,
    "travelled": _travelled,
    "deviation": _deviation,
    "difference": _difference,
    "fluid_match": _fluid_match,
    "unit_slip": _unit_slip,
}
