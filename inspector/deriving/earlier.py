"""Earlier values of what wears: its own earlier readings, or those of the length it is worked out from."""

from __future__ import annotations

from dataclasses import replace

from inspector.deriving.amounts import Derived
from inspector.deriving.derived import Values, derive
from inspector.reading.inspection import Earlier, Measured


def earlier_values(values: Values, part: str, place: str, name: str) -> tuple[Earlier, ...]:
    """What a property showed before; a derived one as its function gives it from each earlier reading."""
    prior = values.known.wear.get((part, name))
    carried = name if prior is None or prior.readings is None else prior.readings
    observation = values.inspection.observations.get((part, place, carried))
    if observation is None or carried == name:
        return () if observation is None else observation.earlier
    found = []
    for one in observation.earlier:
        then = {(part, place, carried): Derived(one.value)}
        value = derive(values, part, place, name, instead=then).value
        if isinstance(value, Measured):
            found.append(replace(one, value=value))
    return tuple(found)
