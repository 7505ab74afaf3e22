"""Drive chains: makers' pitch code and printed lengths, published wear limits, handbook method."""

import pytest

from inspector.quantities.chain import (
    elongation,
    elongation_uncertainty,
    industrial_limit,
    length_from_rollers,
    pitch_of,
)


@pytest.mark.parametrize(
    ("series", "pitch", "new", "one", "two", "three"),
    [
        ("415", 12.700, 254.0, 256.5, 259.1, 261.6),
        ("428", 12.700, 254.0, 256.5, 259.1, 261.6),
        ("520", 15.875, 317.5, 320.7, 323.9, 327.0),
        ("525 VX", 15.875, 317.5, 320.7, 323.9, 327.0),
        ("530", 15.875, 317.5, 320.7, 323.9, 327.0),
        ("630", 19.05, 381.0, 384.8, 388.6, 392.4),
    ],
)
def test_twenty_pitches(series, pitch, new, one, two, three):
    # pitch and 3 % as printed by chain pages, the rest calculated
    assert pitch_of(series) == pytest.approx(pitch)
    for percent, length in enumerate((new, one, two, three)):
        assert elongation(length, 20, pitch) == pytest.approx(percent, abs=0.025)


@pytest.mark.parametrize(
    ("limit", "pitches", "pitch", "percent"),
    [
        (319.4, 20, 15.875, 0.60),  # road manual, 525
        (272.0, 17, 15.875, 0.8),  # 18 rollers under 15 kg, taken as 17 pitches
        (242.9, 15, 15.875, 2.0),  # off-road manual, 15 links, new 238.1
        (323.0, 20, 15.875, 1.7),  # road manual, from memory
        (321.6, 20, 15.875, 1.29),  # calculated
    ],
)
def test_published_limits_as_percent(limit, pitches, pitch, percent):
    assert elongation(limit, pitches, pitch) == pytest.approx(percent, abs=0.05)


@pytest.mark.parametrize(
    ("teeth", "adjustable", "percent"),
    [(17, True, 3), (67, True, 3), (68, True, 2.94), (80, True, 2.5), (40, False, 1.5), (160, False, 1.25)],
)
def test_industrial_limit(teeth, adjustable, percent):
    # chain handbook; 80 teeth calculated
    assert industrial_limit(teeth, adjustable=adjustable) == pytest.approx(percent, abs=0.005)


def test_rollers_measured_inside_and_outside():
    # handbook: L = (inside + outside) / 2; the roller of 10.16 mm drops out
    assert length_from_rollers(317.5 - 10.16, 317.5 + 10.16) == pytest.approx(317.5)


def test_half_a_millimetre_of_rule_on_twenty_pitches():
    assert elongation_uncertainty(0.5, 20, 15.875) == pytest.approx(0.157, abs=0.001)


@pytest.mark.parametrize(
    "call",
    [
        lambda: pitch_of("999"),
        lambda: elongation(0.0, 20, 15.875),
        lambda: elongation(320.0, 0, 15.875),
        lambda: length_from_rollers(300.0, 290.0),
        lambda: industrial_limit(0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|no known chain"):
        call()
