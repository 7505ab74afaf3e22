"""What the findings may cost to put right, by the user's own prices: a range, never one figure."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.quantities.costs import Estimate, quantiles, rounded_outward, widened
from inspector.quantities.money import Money
from inspector.reading.prices import Price, Prices
from inspector.weighing.assessment import Assessment, FindingEntry
from inspector.weighing.upkeep import Asking, CostLine, Costs

_TO_PAY = ("stop", "repair", "plan")
_LEAST, _MOST = 0.1, 0.9
_SIDES = (" inner", " outer")


def with_costs(assessment: Assessment, prices: Prices, asking: Money | None) -> Assessment:
    """The assessment with its costs."""
    found, suspected = to_pay(assessment.findings), to_pay(assessment.causes)
    priced = [(entry, price) for entry in found if (price := _price(entry, prices)) is not None]
    low, high = _total(priced, prices)
    doubtful = [(entry, price) for entry in suspected if (price := _price(entry, prices)) is not None]
    costs = Costs(
        currency=prices.currency,
        priced_on=prices.day.isoformat(),
        invented=prices.invented,
        low=low,
        high=high,
        lines=_lines(priced, prices),
        suspected=_lines(doubtful, prices),
        without_price=tuple(e.label for e in (*found, *suspected) if _price(e, prices) is None),
        not_looked_at=len(assessment.unseen),
        asking=_asking(asking, prices, low, high),
    )
    return assessment.model_copy(update={"costs": costs})


def to_pay(entries: Iterable[FindingEntry]) -> list[FindingEntry]:
    """Those that call for work; what is only watched costs nothing yet."""
    return [entry for entry in entries if entry.level in _TO_PAY and entry.effort != "none"]


def _price(entry: FindingEntry, prices: Prices) -> Price | None:
    return prices.rules.get(entry.rule) or prices.effort.get(entry.effort)


def _estimate(price: Price, prices: Prices) -> Estimate:
    rate = prices.rate
    return Estimate(
        price.parts.low + price.hours.low * rate.low,
        price.parts.usual + price.hours.usual * rate.usual,
        price.parts.high + price.hours.high * rate.high,
    )


def _where(entry: FindingEntry) -> tuple[str, str]:
    """Part and place of the work: the inner and the outer pad are one piece of work."""
    place = entry.place
    for side in _SIDES:
        place = place.removesuffix(side)
    return entry.part, place


def _total(priced: list[tuple[FindingEntry, Price]], prices: Prices) -> tuple[float, float]:
    """The lower end counts the work at one part and place once, at its dearest; the upper end every finding.

    Nobody can tell from a record how much of the work is shared. Figures that people write down span too little,
    so they are widened here, and only here.
    """
    if not priced:
        return 0.0, 0.0
    once: dict[tuple[str, str], Estimate] = {}
    each: dict[tuple[str, str, str], Estimate] = {}
    for entry, price in priced:
        where, estimate = _where(entry), widened(_estimate(price, prices))
        each[(entry.rule, *where)] = estimate
        if where not in once or estimate.usual > once[where].usual:
            once[where] = estimate
    (low,) = quantiles(list(once.values()), (_LEAST,))
    (high,) = quantiles(list(each.values()), (_MOST,))
    return rounded_outward(low, max(low, high))


def _lines(priced: list[tuple[FindingEntry, Price]], prices: Prices) -> tuple[CostLine, ...]:
    rows: dict[tuple[str, str, str], list[tuple[FindingEntry, Price]]] = {}
    for entry, price in priced:
        rows.setdefault((entry.rule, *_where(entry)), []).append((entry, price))
    return tuple(_line(found, prices) for found in rows.values())


def _line(found: list[tuple[FindingEntry, Price]], prices: Prices) -> CostLine:
    entry, price = found[0]
    estimate = _estimate(price, prices)
    low, high = rounded_outward(estimate.low, estimate.high)
    return CostLine(
        labels=tuple(one.label for one, _ in found),
        title=entry.title,
        part=entry.part,
        place=_where(entry)[1],
        effort=entry.effort,
        priced_by="rule" if entry.rule in prices.rules else "size of job",
        low=low,
        high=high,
    )


def _asking(asking: Money | None, prices: Prices, low: float, high: float) -> Asking | None:
    """What is left of the price asked; nothing can be told when it is in another currency."""
    if asking is None:
        return None
    if asking.currency != prices.currency:
        return Asking(typed=asking.typed, currency=asking.currency, low=None, high=None)
    left = (max(asking.number - high, 0.0), max(asking.number - low, 0.0))
    least, most = rounded_outward(*left)
    return Asking(typed=asking.typed, currency=asking.currency, low=least, high=most)
