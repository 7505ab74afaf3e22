"""Measured values as lines of a table and as the figures of a drawing, with the limit that matters most."""

from __future__ import annotations

import math

from inspector.deriving.facts import Fact, Facts
from inspector.deriving.limits import Applied
from inspector.knowledge.library import Knowledge
from inspector.quantities.other_units import in_system
from inspector.quantities.units import Amount, base_unit, convert, number_text, parse_amount
from inspector.reading.inspection import Earlier, Measured
from inspector.reading.values import in_unit
from inspector.weighing.ahead import forecast_text
from inspector.weighing.assessment import Measurement, Reading, Scale, Wear


def measurements(facts: Facts, knowledge: Knowledge) -> tuple[Measurement, ...]:
    """Every measured or derived amount; distances of a forecast in the unit of the odometer."""
    odometer = facts.inspection.odometer
    unit = "mi" if odometer is not None and odometer.unit == "mi" else "km"
    return tuple(
        _measurement(fact, fact.value, unit, facts, knowledge)
        for fact in facts.all
        if isinstance(fact.value, Measured)
    )


def _measurement(fact: Fact, value: Measured, unit: str, facts: Facts, knowledge: Knowledge) -> Measurement:
    limit = _leading_limit(fact, knowledge)
    amount = value.amount
    spread = value.uncertainty if amount.dimension == "temperature" else abs(in_unit(value.uncertainty, amount))
    return Measurement(
        part=fact.part,
        place=fact.place,
        name=fact.name,
        value=value.typed,
        kind="worked out" if fact.derived_from else "measured",
        tool=value.tool,
        uncertainty=f"± {number_text(spread, 1)} {amount.unit}" if spread else "",
        limit=limit.band.words if limit and limit.band else None,
        limit_origin=limit.band.origin if limit and limit.band else None,
        standing=limit.standing if limit else None,
        forecast=_forecast(fact, unit),
        scale=_scale(fact, value, limit, spread, facts, knowledge) if limit else None,
        wear=_wear(fact, value, spread, unit, facts, knowledge),
        metric=in_system(amount, "metric"),
        imperial=in_system(amount, "imperial"),
    )


def _forecast(fact: Fact, unit: str) -> str | None:
    if fact.forecast is None:
        return None
    towards = fact.limits.get(fact.forecast.limit)
    assert isinstance(fact.value, Measured)
    limit = towards.band.text if towards and towards.band else None
    return forecast_text(fact.forecast, unit, fact.value.amount, limit)


def _leading_limit(fact: Fact, knowledge: Knowledge) -> Applied | None:
    """The worst limit that is not kept; else the one the machine gives; else the one that matters most."""
    known = [limit for limit in fact.limits.values() if limit.band is not None]

    def weight(limit: Applied) -> int:
        return knowledge.limit_weights.get((fact.part, fact.name, limit.name), 0)

    beyond = [limit for limit in known if limit.standing == "beyond" and weight(limit) > 0]
    if beyond:
        return max(beyond, key=weight)
    given = knowledge.given_limit(fact.part, fact.name)
    mattering = [limit for limit in known if weight(limit) > 0 or limit.name == given]
    return next((limit for limit in mattering if limit.name == given), max(mattering, key=weight, default=None))


def _scale(
    fact: Fact, value: Measured, limit: Applied, spread: float, facts: Facts, knowledge: Knowledge
) -> Scale | None:
    band = limit.band
    assert band is not None
    prior = knowledge.wear.get((fact.part, fact.name))
    return Scale(
        unit=value.amount.unit,
        value=value.amount.number,
        spread=spread,
        at_least=_typed(band.at_least, value.amount),
        at_most=_typed(band.at_most, value.amount),
        new=_typed(parse_amount(prior.new, value.amount.dimension).base, value.amount) if prior else None,
        by_horizon=_by_horizon(fact, value, facts, knowledge),
    )


def _by_horizon(fact: Fact, value: Measured, facts: Facts, knowledge: Knowledge) -> float | None:
    """Where the middle of the forecast has the value at the end of the horizon, at most at its limit."""
    edge = _worn_to(fact, knowledge)
    if fact.forecast is None or not fact.forecast.middle or edge is None:
        return None
    share = min(facts.inspection.horizon_km / fact.forecast.middle, 1.0)
    return _typed(value.amount.base + (edge - value.amount.base) * share, value.amount)


def _wear(
    fact: Fact, value: Measured, spread: float, unit: str, facts: Facts, knowledge: Knowledge
) -> Wear | None:
    """The figures of a chart; None without an earlier reading, a limit or an odometer."""
    odometer, ahead, edge = facts.inspection.odometer, fact.forecast, _worn_to(fact, knowledge)
    if not fact.earlier or odometer is None or ahead is None or edge is None:
        return None
    band, limit = fact.limits[ahead.limit].band, _typed(edge, value.amount)
    assert band is not None
    assert limit is not None

    def way(km: float | None) -> float | None:
        return None if km is None or math.isinf(km) else convert(km, "km", unit, "distance")

    def reading(one: Earlier) -> Reading:
        number = in_unit(one.value.amount.base, value.amount)
        off = abs(in_unit(one.value.uncertainty, value.amount))
        return Reading(odometer=way(one.odometer.base) or 0.0, value=number, spread=off, new_part=one.new_part)

    today = Reading(odometer=way(odometer.base) or 0.0, value=value.amount.number, spread=spread)
    return Wear(
        unit=value.amount.unit,
        distance_unit=unit,
        readings=(*sorted((reading(one) for one in fact.earlier), key=lambda one: one.odometer), today),
        limit=limit,
        limit_words=band.words,
        limit_origin=band.origin,
        horizon=way(facts.inspection.horizon_km) or 0.0,
        low=way(ahead.low),
        high=way(ahead.high),
    )


def _worn_to(fact: Fact, knowledge: Knowledge) -> float | None:
    """The bound, in base units, that wear goes towards."""
    prior = knowledge.wear.get((fact.part, fact.name))
    towards = fact.limits.get(fact.forecast.limit) if fact.forecast else None
    if prior is None or towards is None or towards.band is None:
        return None
    return towards.band.at_least if prior.sense == "falls" else towards.band.at_most


def _typed(base: float | None, amount: Amount) -> float | None:
    """A figure in base units in the unit that was typed."""
    return None if base is None else convert(base, base_unit(amount.dimension), amount.unit, amount.dimension)
