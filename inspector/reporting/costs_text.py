"""What it may cost, in words: a range with its currency, or the sizes of the jobs when no prices are given."""

from __future__ import annotations

from collections import Counter

from inspector.knowledge.wording import words
from inspector.reporting.due_text import day_text
from inspector.reporting.lines import bullet, heading, paragraph
from inspector.weighing.assessment import Assessment
from inspector.weighing.costing import to_pay
from inspector.weighing.upkeep import CostLine, Costs


def money_range(low: float, high: float, currency: str) -> str:
    """`450 to 1 600 EUR`."""
    if low == high:
        return f"{_figure(low)} {currency}"
    return str(words()["costs"]["range"].format(low=_figure(low), high=_figure(high), currency=currency))


def _figure(number: float) -> str:
    return (f"{number:,.0f}" if number == round(number) else f"{number:,.2f}").replace(",", " ")


def costs_sum(costs: Costs) -> str:
    """The sum in one sentence; what was not looked at is never in it."""
    wording = words()["costs"]
    if not costs.lines:
        return str(wording["nothing"])
    return str(wording["sum"].format(range=money_range(costs.low, costs.high, costs.currency)))


def costs_notes(costs: Costs) -> list[str]:
    """How the sum was made, what is not in it, and what is left of the price asked."""
    wording = words()["costs"]
    notes = [wording["made"].format(day=day_text(costs.priced_on))]
    if costs.invented:
        notes.append(wording["invented"])
    if costs.not_looked_at:
        notes.append(wording["not_looked_at"].format(number=costs.not_looked_at))
    if costs.without_price:
        notes.append(wording["without_price"].format(labels=", ".join(costs.without_price)))
    asking = costs.asking
    if asking is not None and (asking.low is None or asking.high is None):
        notes.append(wording["asking_other"].format(typed=asking.typed, currency=costs.currency))
    elif asking is not None and asking.low is not None and asking.high is not None:
        left = money_range(asking.low, asking.high, costs.currency)
        notes.append(wording["asking"].format(typed=asking.typed, left=left))
    return notes


def cost_line(line: CostLine, currency: str) -> str:
    """One piece of work with its range and the findings it is for."""
    labels = words()["text"]["for_findings"].format(labels=", ".join(line.labels))
    return f"{line.title} ({line.part}, {line.place}): {money_range(line.low, line.high, currency)} {labels}"


def sizes(assessment: Assessment) -> str:
    """How many jobs of each size, largest first; no money."""
    order = [word for word in words()["effort"] if word != "none"][::-1]
    counted = Counter(entry.effort for entry in to_pay(assessment.findings))
    listed = ", ".join(f"{counted[word]} {word}" for word in order if counted[word])
    return str(words()["costs"]["sizes"].format(listed=listed)) if listed else ""


def cost_lines(assessment: Assessment, width: int) -> list[str]:
    """What it may cost, for a terminal."""
    costs, wording = assessment.costs, words()["costs"]
    if costs is None:
        text = sizes(assessment)
        return ["", *paragraph(text, width)] if text else []
    lines = [*heading(words()["heading"]["costs"], width), *paragraph(costs_sum(costs), width)]
    for line in costs.lines:
        lines += bullet(cost_line(line, costs.currency), width)
    if costs.suspected:
        lines += paragraph(wording["suspected"], width)
        for line in costs.suspected:
            lines += bullet(cost_line(line, costs.currency), width)
    for note in costs_notes(costs):
        lines += paragraph(note, width)
    return lines
