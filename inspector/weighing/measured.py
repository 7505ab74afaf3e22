"""Measured values as lines of a table and as the figures of a drawing, with the limit that matters most."""

from __future__ import annotations

from inspector.deriving.facts import Fact, Facts
from inspector.deriving.limits import Applied
from inspector.knowledge.library import Knowledge
from inspector.quantities.units import base_unit, convert, number_text, parse_amount
from inspector.reading.inspection import Measured
from inspector.reading.values import in_unit
from inspector.weighing.ahead import forecast_text
from inspector.weighing.assessment import Measurement, Scale


def measurements(facts: Facts, knowledge: Knowledge) -> tuple[Measurement, ...]:
    """Every measured or derived amount; distances of a forecast in the unit of the odometer."""
    odometer = facts.inspection.odometer
    unit = "mi" if odometer is not None and odometer.unit == "mi" else "km"
    return tuple(
        _measurement(fact, fact.value, unit, facts, knowledge)
        for fact in facts.all()
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
    )


def _forecast(fact: Fact, unit: str) -> str | None:
    if fact.forecast is None:
        return None
    towards = fact.limits.get(fact.forecast.limit)
    return forecast_text(fact.forecast, unit, towards.band.text if towards and towards.band else None)


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
    amount, band = value.amount, limit.band
    assert band is not None

    def typed(base: float | None) -> float | None:
        return None if base is None else convert(base, base_unit(amount.dimension), amount.unit, amount.dimension)

    prior = knowledge.wear.get((fact.part, fact.name))
    history = fact.observation.earlier if fact.observation else ()
    ahead = fact.forecast
    horizon = None
    if ahead is not None and ahead.middle:
        share = min(facts.inspection.horizon_km / ahead.middle, 1.0)
        edge = band.at_least if band.at_least is not None else band.at_most
        horizon = None if edge is None else typed(amount.base + (edge - amount.base) * share)
    return Scale(
        unit=amount.unit,
        value=amount.number,
        spread=spread,
        at_least=typed(band.at_least),
        at_most=typed(band.at_most),
        new=typed(parse_amount(prior.new, amount.dimension).base) if prior else None,
        by_horizon=horizon,
        readings=tuple((e.odometer.base, in_unit(e.value.amount.base, amount)) for e in history),
    )
