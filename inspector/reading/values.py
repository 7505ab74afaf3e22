"""Read one value as typed into what its property holds. Knows no record and no rule."""

from __future__ import annotations

import re
from datetime import date

from inspector.knowledge.faults import not_allowed
from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Property
from inspector.quantities.tyres import tyre_date
from inspector.quantities.units import (
    Amount,
    NotAnAmount,
    base_unit,
    convert,
    parse_amount,
    parse_number,
)
from inspector.reading.inspection import (
    Counted,
    Day,
    FreeText,
    Measured,
    Silence,
    Silent,
    TyreCode,
    Value,
    Word,
)

_SILENCES: dict[str, Silence] = {
    "not checked": "not looked at",
    "not looked at": "not looked at",
    "could not see": "could not see",
    "does not apply": "does not apply",
}
_SILENT = re.compile(r"(?P<state>[a-z ]+?)\s*(?:$|[:,(]\s*(?P<reason>.*?)\s*\)?$)", re.IGNORECASE | re.DOTALL)
LONGEST_TEXT = 4000
_GUESS = "25 %"  # a tool that is not made for what it is said to have measured is worth a guess by eye


class NotAValue(ValueError):
    """A text that the property cannot hold; the message says what is allowed."""


def read_silence(text: str) -> Silent | None:
    """`not checked: reason`, `could not see`, `does not apply`; None for anything else."""
    match = _SILENT.fullmatch(text.strip())
    if match is None:
        return None
    state = _SILENCES.get(" ".join(match["state"].lower().split()))
    return Silent(state, match["reason"] or None) if state else None


def read_value(text: str, prop: Property, knowledge: Knowledge, today: date) -> Value | Silent:
    """Read `text` as the property's kind of value. Raises NotAValue."""
    silent = read_silence(text)
    if silent is not None:
        return silent
    try:
        match prop.kind:
            case "quantity":
                return read_measured(text, prop, knowledge)
            case "count":
                return _count(text, prop)
            case "odometer":
                return Word("unknown") if _is_unknown(text) else _odometer(text)
            case "date":
                return Word("unknown") if _is_unknown(text) else Day(read_day(text, today))
            case "tyre_code":
                tyre_date(text, today)
                return TyreCode(text.strip())
            case "text":
                return FreeText(_short(text))
            case "choice" | "yes_no":
                return _word(text, prop)
    except NotAnAmount as error:
        raise NotAValue(str(error)) from None
    except ValueError as error:
        raise NotAValue(str(error)) from None


def _is_unknown(text: str) -> bool:
    return text.strip().lower() in ("unknown", "not known")


def _short(text: str) -> str:
    if len(text) > LONGEST_TEXT:
        raise NotAValue(f"the text has {len(text)} characters; at most {LONGEST_TEXT}")
    return text.strip()


def _word(text: str, prop: Property) -> Word:
    word = " ".join(text.strip().lower().split())
    if prop.kind == "yes_no" and word in ("true", "false"):
        word = "yes" if word == "true" else "no"
    allowed = {choice.lower(): choice for choice in prop.words()}
    if word not in allowed:
        raise NotAValue(not_allowed("the answer", text.strip(), prop.words(), most=20))
    return Word(allowed[word])


def _count(text: str, prop: Property) -> Counted:
    number = parse_number(text)
    low, high = prop.plausible_range()
    if number != int(number) or not low <= number <= high:
        raise NotAValue(f"`{text}` is not a whole number from {low:.0f} to {high:.0f}")
    return Counted(int(number))


def _odometer(text: str) -> Measured:
    return Measured(read_odometer(text), 0.0, None, stated=True)


def read_odometer(text: str) -> Amount:
    """A reading of the distance counter. Raises NotAnAmount."""
    amount = parse_amount(text, "distance")
    if not 0 <= amount.base <= 2_000_000:
        raise NotAnAmount(f"`{text}` is no believable odometer reading; 0 km to 2 000 000 km are")
    return amount


def read_day(text: str, today: date) -> date:
    """An ISO date not after `today`. Raises NotAValue."""
    match = re.fullmatch(r"\s*(\d{4})-(\d{1,2})(?:-(\d{1,2}))?\s*", text)
    if match is None:
        raise NotAValue(f"`{text}` is not a date. Write year-month-day, such as 2024-05-17 (or 2024-05)")
    try:
        day = date(int(match[1]), int(match[2]), int(match[3] or 1))
    except ValueError:
        raise NotAValue(f"`{text}` is not a day of the calendar") from None
    if day > today:
        raise NotAValue(f"{day} lies in the future; the latest day allowed is {today}")
    if day.year < 1900:
        raise NotAValue(f"{day} lies before 1900")
    return day


def read_measured(text: str, prop: Property, knowledge: Knowledge) -> Measured:
    """An amount, as `1.8 mm`, `1.8 mm ± 0.1 mm` or `1.8 mm with caliper`. Raises NotAValue, NotAnAmount."""
    dimension = str(prop.dimension)
    rest, _, tool = text.partition(" with ")
    first, sign, spread = re.sub(r"\+\s*/\s*-", "±", rest).partition("±")
    amount = parse_amount(first, dimension)
    low, high = prop.plausible_range()
    if not low <= amount.base <= high:
        raise NotAValue(f"`{amount.typed}` is not believable here; from {prop.plausible} is")
    named = _tool(tool, knowledge) if tool else None
    if sign:
        unit = spread if re.search(r"[^\d.\s]", spread) else f"{spread} {amount.unit}"
        stated = parse_amount(unit, _spread_dimension(dimension))
        if stated.base < 0:
            raise NotAValue(f"`± {spread.strip()}` cannot be negative")
        return Measured(amount, stated.base, named, stated=True)
    assumed = named or next((t for t in prop.tools if t in knowledge.tools), None)
    # a figure that nobody measures, such as one printed on a sticker, names no tool and is taken as exact
    uncertainty = tool_uncertainty(amount, assumed, knowledge) if assumed else 0.0
    return Measured(amount, uncertainty, named, stated=False)


def _spread_dimension(dimension: str) -> str:
    return "temperature difference" if dimension == "temperature" else dimension


def _tool(text: str, knowledge: Knowledge) -> str:
    name = " ".join(text.lower().removeprefix("a ").removeprefix("the ").split())
    if name not in knowledge.tools:
        raise NotAValue(not_allowed("the tool", text.strip(), knowledge.tools, most=20))
    return name


def tool_uncertainty(amount: Amount, tool: str, knowledge: Knowledge) -> float:
    """Standard uncertainty in base units of a reading with a tool; the largest of what the tool states."""
    gives = knowledge.tools[tool].gives.get(amount.dimension) or _GUESS
    figures = []
    for text in gives.split(" or "):
        if text.strip().endswith("%") and amount.dimension != "percent":
            figures.append(abs(amount.base) * parse_amount(text, "percent").base / 100)
        else:
            figures.append(parse_amount(text, _spread_dimension(amount.dimension)).base)
    return max(figures)


def in_unit(base: float, amount: Amount) -> float:
    """A base amount in the unit that `amount` was typed in."""
    return convert(base, base_unit(amount.dimension), amount.unit, amount.dimension)
