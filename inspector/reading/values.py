"""Read one value as typed into what its property holds. Knows no record and no rule."""

from __future__ import annotations

import re
from datetime import date

from inspector.knowledge.faults import not_allowed, shown
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
from inspector.reading.addresses import plain
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
SILENCE_HEADINGS = ("not checked", "could not see", "does not apply")
_SILENT = re.compile(
    r"(?P<state>not\s+checked|not\s+looked\s+at|could\s+not\s+see|does\s+not\s+apply)\b\s*(?P<rest>.*)",
    re.IGNORECASE | re.DOTALL,
)
_COMMA = re.compile(r"(?P<before>[-−]?\d+),(?P<behind>\d+)(?P<rest>(?:\s*[^\d\s,;]+){0,6})")
_DOTTED_DAY = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})")
_LONGEST_VALUE = 200
MOST_ODOMETER_KM = 2_000_000
_GUESS = "25 %"  # a tool that is not made for what it is said to have measured is worth a guess by eye


class NotAValue(ValueError):
    """A text that the property cannot hold; the message says what is allowed."""


def read_silence(text: str) -> Silent | None:
    """`not checked: reason`, `could not see`, `does not apply`; None for anything else."""
    match = _SILENT.fullmatch(text.strip().replace("_", " ", 4))
    if match is None:
        return None
    # the reason is taken from the text itself, where underscores are the person's own
    rest = text.strip()[match.start("rest") :]
    if rest and not rest.startswith((":", ",", ";", ".", "(", "-", "–", "—", "because")):
        return None
    if rest.startswith("(") and rest.endswith(")"):
        rest = rest[1:-1]
    return Silent(_SILENCES[" ".join(match["state"].lower().split())], rest.lstrip(":,;.(-–— ").strip() or None)


def silence(heading: str, reason: str | None) -> Silent:
    """What stands under the heading `not checked`, `could not see` or `does not apply`. Raises NotAValue."""
    word = (reason or "yes").lower()
    if word in ("no", "false"):
        raise NotAValue(f"`{heading}: {word}` says neither this nor that; write the value, or leave it out")
    return Silent(_SILENCES[heading], None if word in ("yes", "true") else reason)


def read_value(text: str, prop: Property, knowledge: Knowledge, today: date) -> Value | Silent:
    """Read `text` as the property's kind of value. Raises NotAValue."""
    silent = read_silence(text)
    if silent is not None:
        return silent
    if prop.kind == "text":
        return FreeText(text.strip())
    if len(text) > _LONGEST_VALUE:
        raise NotAValue(f"{shown(text)} is too long for a value; put a longer text into `note`")
    if prop.kind in ("odometer", "date") and _is_unknown(text):
        return Word("unknown")
    try:
        match prop.kind:
            case "quantity":
                return read_measured(text, prop, knowledge)
            case "count":
                return _count(text, prop)
            case "odometer":
                return _odometer(text)
            case "date":
                return Day(read_day(text, today))
            case "tyre_code":
                return _tyre_code(text, today)
            case "choice" | "yes_no":
                return _word(text, prop)
    except NotAnAmount as error:
        raise NotAValue(f"{error}{_silence_tip(text)}") from None


def with_point(text: str) -> str:
    """A decimal comma as a point, where a form or a spreadsheet was filled in and nothing else can be meant.

    With three digits behind it the comma may part thousands (unless nought stands before it); then it stays.
    """
    match = _COMMA.fullmatch(text.strip())
    if match is None or (len(match["behind"]) == 3 and match["before"].lstrip("-−") != "0"):
        return text
    return f"{match['before']}.{match['behind']}{match['rest']}"


def with_iso_day(text: str) -> str:
    """A day as spreadsheets of some countries save it, 17.05.2024, as 2024-05-17; anything else as it stands."""
    match = _DOTTED_DAY.fullmatch(text.strip())
    return f"{match[3]}-{int(match[2]):02}-{int(match[1]):02}" if match else text


def _silence_tip(text: str) -> str:
    unread = _SILENT.match(text.strip())
    return ". To say that you could not look, write `not checked: reason`" if unread else ""


def _is_unknown(text: str) -> bool:
    return text.strip().lower() in ("unknown", "not known")


def _tyre_code(text: str, today: date) -> TyreCode:
    code = text.strip()
    if not re.fullmatch(r"[0-9]{3,4}", code):
        raise NotAValue(
            f"{shown(text)} is no tyre date code: four digits, week and year, as 4819 for week 48 of 2019"
        )
    try:
        tyre_date(code, today)
    except ValueError as error:
        raise NotAValue(str(error).replace("'", "`")) from None
    return TyreCode(code)


def _word(text: str, prop: Property) -> Word:
    word = plain(text)
    if prop.kind == "yes_no" and word in ("true", "false"):
        word = "yes" if word == "true" else "no"
    allowed = {plain(choice): choice for choice in prop.words()}
    if word not in allowed:
        raise NotAValue(not_allowed("the answer", text.strip(), prop.words(), most=20) + _silence_tip(text))
    return Word(allowed[word])


def _count(text: str, prop: Property) -> Counted:
    low, high = prop.plausible_range()
    try:
        number = parse_number(text)
    except NotAnAmount:
        number = low - 1
    if number != int(number) or not low <= number <= high:
        wanted = f"is not a whole number from {low:.0f} to {high:.0f}"
        raise NotAValue(f"{shown(text)} {wanted}{_silence_tip(text)}")
    return Counted(int(number))


def _odometer(text: str) -> Measured:
    return Measured(read_odometer(text), 0.0, None, stated=True)


def read_odometer(text: str) -> Amount:
    """A reading of the distance counter. Raises NotAnAmount."""
    amount = parse_amount(text[:_LONGEST_VALUE], "distance")
    if not 0 <= amount.base <= MOST_ODOMETER_KM:
        raise NotAnAmount(f"{shown(text)} is no believable odometer reading; 0 km to 2 000 000 km are")
    return amount


def read_day(text: str, today: date) -> date:
    """An ISO date not after `today`. Raises NotAValue."""
    match = re.fullmatch(r"\s*(\d{4})-(\d{1,2})(?:-(\d{1,2}))?\s*", text)
    if match is None:
        raise NotAValue(f"{shown(text)} is not a date. Write year-month-day, such as 2024-05-17 (or 2024-05)")
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
    """An amount: `1.8 mm`, `1.8 mm ± 0.1 mm`, `1.8 mm with caliper`, `2 mm by eye`.

    Raises NotAValue, NotAnAmount.
    """
    dimension = str(prop.dimension)
    flat = " ".join(text.split())
    if " with " not in flat.lower():
        flat = re.sub(r"\sby eye$", " with by eye", flat, flags=re.IGNORECASE)
    rest, *tools = re.split(r"\swith\s", f"{flat} ", maxsplit=1, flags=re.IGNORECASE)
    first, sign, spread = re.sub(r"\+ ?/ ?-", "±", rest).partition("±")
    if sign and _is_number(first) and not _is_number(spread):
        first += re.sub(r"^[^a-zA-Z°%µμ\"″]*", " ", spread)  # `1.8 ± 0.1 mm`
    amount = parse_amount(first, dimension)
    low, high = prop.plausible_range()
    if not low <= amount.base <= high:
        raise NotAValue(f"`{amount.typed}` is not believable here; from {prop.plausible} is")
    named = _tool(tools[0], prop, knowledge) if tools else None
    if sign:
        return Measured(amount, _stated(spread, amount, high - low), named, stated=True)
    assumed = named or next((t for t in prop.tools if t in knowledge.tools), None)
    # a figure that nobody measures, such as one printed on a sticker, names no tool and is taken as exact
    uncertainty = tool_uncertainty(amount, assumed, knowledge) if assumed else 0.0
    return Measured(amount, uncertainty, named, stated=False)


def _is_number(text: str) -> bool:
    try:
        parse_number(text)
    except NotAnAmount:
        return False
    return True


def _stated(text: str, amount: Amount, most: float) -> float:
    """The uncertainty after `±`, in base units; without a unit it has that of the amount."""
    whole = f"{text} {amount.unit}" if _is_number(text) else text
    stated = parse_amount(whole, _spread_dimension(amount.dimension))
    if not 0 <= stated.base <= most:
        raise NotAValue(
            f"`± {stated.typed}` is not believable here; it cannot be negative or wider than the range"
        )
    return stated.base


def _spread_dimension(dimension: str) -> str:
    return "temperature difference" if dimension == "temperature" else dimension


def _tool(text: str, prop: Property, knowledge: Knowledge) -> str:
    name = plain(text).removeprefix("a ").removeprefix("the ")
    if name not in knowledge.tools:
        fitting = [tool for tool, entry in knowledge.tools.items() if prop.dimension in entry.gives]
        fitting.sort(key=lambda tool: tool not in prop.tools)  # the usual ones of this look first
        listed = dict.fromkeys((*fitting, *knowledge.tools))
        raise NotAValue(not_allowed("the tool", text.strip(), listed, most=len(fitting) or 20))
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
