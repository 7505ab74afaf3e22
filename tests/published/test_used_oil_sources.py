"""ISO 4406:2017 particle codes, a dealer's PQ memo of 2008, metal per distance."""

import pytest

from inspector.quantities.used_oil import (
    iso4406_bounds,
    iso4406_number,
    iso4406_numbers,
    iso4406_trend,
    per_1000_km,
    pq_jumped,
    pq_zone,
)


@pytest.mark.parametrize(
    ("number", "above", "up_to"),
    [
        (0, 0, 0.01),
        (7, 0.64, 1.3),
        (8, 1.3, 2.5),
        (9, 2.5, 5),
        (12, 20, 40),
        (14, 80, 160),
        (17, 640, 1300),
        (20, 5000, 10_000),
        (28, 1_300_000, 2_500_000),
    ],
)
def test_iso_4406_table(number, above, up_to):
    assert iso4406_bounds(number) == (above, up_to)
    assert iso4406_number(up_to) == number
    assert iso4406_number(up_to * 1.0001) == number + 1


def test_iso_4406_example_counted_in_100_ml():
    # 300 000, 50 000 and 700 in 100 ml: 19/16/10. The trap: the same figures taken for counts per ml
    assert iso4406_numbers("300 000/50 000/700 per 100 ml") == (19, 16, 10)
    assert iso4406_numbers("3000 / 500 / 7 per ml") == (19, 16, 10)
    assert iso4406_numbers("300000/50000/700 /ml") == (25, 23, 17)
    assert iso4406_trend("19/16/10", "300 000/50 000/700 per 100 ml") == "as before"
    assert iso4406_trend("19/16/10", "300000/50000/700 per ml") == "dirtier"


def test_iso_4406_example_with_few_counts():
    # 14/12/>=7: 80-160, 20-40, 0.64-1.3 per ml, the last from fewer than twenty particles
    numbers = iso4406_numbers("14/12/≥7")

    assert numbers == (14, 12, 7)
    assert [iso4406_bounds(number) for number in numbers] == [(80, 160), (20, 40), (0.64, 1.3)]


def test_more_than_the_scale():
    assert iso4406_numbers(">28/14/14") == (28, 14, 14)
    assert iso4406_numbers("3000000/100/100 per ml") == (29, 14, 14)


@pytest.mark.parametrize(
    "text",
    [
        "500/3000/7 per ml",
        "3000/500 per ml",
        "3000/500/7",
        "3000/500/7 per l",
        "1.2.3/1/1 per ml",
        "-3/1/1 per ml",
        "",
    ],
)
def test_what_is_neither_code_nor_counts(text):
    assert iso4406_numbers(text) is None


@pytest.mark.parametrize(
    ("compartment", "calm", "watchful"),
    [
        ("engine", 28, 35),
        ("powershift transmission", 44, 55),
        ("hydraulic", 28, 35),
        ("axle", 308, 385),
        ("wheel final drive", 216, 270),
        ("track final drive", 594, 743),
    ],
)
def test_pq_memo(compartment, calm, watchful):
    assert pq_zone(compartment, calm) == "no action"
    assert pq_zone(compartment, calm + 1) == "monitor"
    assert pq_zone(compartment, watchful) == "monitor"
    assert pq_zone(compartment, watchful + 1) == "action"


def test_pq_rise_of_half():
    assert pq_jumped(40, 60)
    assert not pq_jumped(40, 59)


@pytest.mark.parametrize(("ppm", "km", "rate"), [(240, 12_000, 20), (180, 4000, 45)])
def test_iron_of_two_fills(ppm, km, rate):
    # calculated: the second is the worse result
    assert per_1000_km(ppm, km) == pytest.approx(rate)


@pytest.mark.parametrize(
    "call",
    [
        lambda: iso4406_number(-1),
        lambda: iso4406_bounds(29),
        lambda: pq_zone("shed", 5),
        lambda: pq_jumped(0, 5),
        lambda: per_1000_km(10.0, 0.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|between|cannot|not in the memo"):
        call()
