"""The user's own price file: read as written, and every fault told with its line and what is allowed."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.quantities.costs import Estimate
from inspector.quantities.money import parse_money
from inspector.quantities.units import NotAnAmount
from inspector.reading.prices import EFFORTS, Prices, read_price_text, read_prices

ROOT = Path(__file__).resolve().parents[2]
TODAY = date(2026, 6, 1)
GOOD = """\
currency: EUR
date: 2026-05-17
hourly rate: 60 to 70 to 95
effort:
  small: {parts: 10 to 40 to 90, hours: 0.5}
rules:
  brakes/pad_below_limit: {parts: 45}
"""


def read(text: str) -> Prices:
    return read_price_text(text, "prices.yaml", knowledge(), TODAY)


def fault(text: str) -> str:
    with pytest.raises(Faults) as caught:
        read(text)
    return "\n".join(str(one) for one in caught.value.faults)


def test_what_is_written_is_read() -> None:
    prices = read(GOOD)

    assert (prices.currency, prices.day, prices.invented) == ("EUR", date(2026, 5, 17), False)
    assert prices.rate == Estimate(60, 70, 95)
    assert prices.effort["small"].parts == Estimate(10, 40, 90)
    assert prices.effort["small"].hours == Estimate(0.5, 0.5, 0.5)
    assert prices.rules["brakes/pad_below_limit"].hours == Estimate(0, 0, 0)


def test_the_sample_is_whole_and_says_that_it_is_invented() -> None:
    prices, text = read_prices(ROOT / "samples" / "prices.yaml", knowledge())

    assert prices.invented
    assert tuple(prices.effort) == EFFORTS
    assert text == (ROOT / "samples" / "prices.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("old", "new", "line", "words"),
    [
        ("currency: EUR", "currency: euro", 1, "`currency` is three letters"),
        ("currency: EUR", "curency: EUR", 1, "Did you mean `currency`?"),
        ("date: 2026-05-17", "date: 2027-05-17", 2, "lies in the future"),
        ("date: 2026-05-17", "date: soon", 2, "is not a date"),
        ("60 to 70 to 95", "60 to 95", 3, "has 2 figures"),
        ("60 to 70 to 95", "95 to 70 to 60", 3, "rise from low to high"),
        ("60 to 70 to 95", "-5 to 70 to 95", 3, "lowest, usual and highest"),
        ("60 to 70 to 95", "sixty", 3, "is not a number"),
        ("60 to 70 to 95", "", 3, "`hourly rate` is missing"),
        ("  small:", "  smal:", 5, "Did you mean `small`?"),
        ("  small:", "  none:", 5, "Allowed: trifle, small, medium"),
        ("hours: 0.5", "hour: 0.5", 5, "Did you mean `hours`?"),
        ("hours: 0.5", "hours: 2000", 5, "not believable; at most 1000"),
        ("brakes/pad_below_limit", "brakes/pad_below_limt", 7, "Did you mean `brakes/pad_below_limit`?"),
        ("{parts: 45}", "{}", 7, "a price has parts and hours below it"),
        ("{parts: 45}", "45", 7, "must have headings below it"),
    ],
)
def test_a_fault_is_told_with_its_line(old: str, new: str, line: int, words: str) -> None:
    assert old in GOOD
    text = fault(GOOD.replace(old, new))

    assert words in text
    assert f"prices.yaml:{line}:" in text


def test_all_faults_are_told_together() -> None:
    text = fault("currency: euro\ndate: soon\n")

    assert text.count("prices.yaml:") == 4
    assert "there is no price" in text


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text: str) -> None:
    found: tuple[object, ...] = ()
    try:
        found = (read(text),)
    except Faults as faults:
        found = faults.faults
    assert found


@pytest.mark.parametrize(
    ("text", "number", "currency"), [("3 200 EUR", 3200, "EUR"), ("850gbp", 850, "GBP"), ("0.5 USD", 0.5, "USD")]
)
def test_a_price_asked_is_a_number_and_a_currency(text: str, number: float, currency: str) -> None:
    assert (parse_money(text).number, parse_money(text).currency) == (number, currency)


@pytest.mark.parametrize("text", ["", "3200", "EUR", "€3200", "3,200 EUR", "-1 EUR", "2e9 EUR", "9999999999 EUR"])
def test_another_price_is_refused(text: str) -> None:
    with pytest.raises(NotAnAmount):
        parse_money(text)
