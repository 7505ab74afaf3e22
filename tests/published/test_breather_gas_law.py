"""Water and breathers: hydrostatics and the gas law. All values calculated."""

import pytest

from inspector.quantities.breather import (
    AIR_PRESSURE,
    drawn_volume,
    head,
    suction,
    vapour_drawn,
    water_at_cooling,
    water_column,
    water_ppm,
)


@pytest.mark.parametrize(("depth", "kpa"), [(0.1, 0.98), (0.3, 2.94), (0.5, 4.90), (0.8, 7.85), (1.0, 9.81)])
def test_head_of_water(depth, kpa):
    assert head(depth) == pytest.approx(kpa, abs=0.005)


@pytest.mark.parametrize(
    ("hot", "cold", "kpa", "metres", "percent"),
    [
        (80, 15, 18.65, 1.90, 18.4),
        (60, 15, 13.69, 1.40, 13.5),
        (90, 10, 22.32, 2.28, 22.0),
        (70, 5, 19.19, 1.96, 18.9),
    ],
)
def test_thermal_suction(hot, cold, kpa, metres, percent):
    vacuum = suction(hot, cold)

    assert vacuum == pytest.approx(kpa, abs=0.005)
    assert water_column(vacuum) == pytest.approx(metres, abs=0.005)
    assert drawn_volume(100.0, hot, cold) == pytest.approx(percent, abs=0.06)


def test_cooling_pulls_several_times_harder_than_the_depth_pushes():
    assert AIR_PRESSURE - suction(80.0, 15) == pytest.approx(82.68, abs=0.005)
    assert suction(80.0, 15) + head(0.3) == pytest.approx(21.6, abs=0.05)
    assert suction(80.0, 15) > 6 * head(0.3)


def test_a_breather_that_ends_under_water():
    # 80 ml of air over 180 ml of oil; 400 ppm is the limit of a gearbox maker
    drawn = drawn_volume(80.0, 80, 15)
    allowed_g = 400e-6 * 180 * 0.88

    assert drawn == pytest.approx(14.7, abs=0.05)
    assert 100 * drawn / 180 == pytest.approx(8, abs=0.3)
    assert allowed_g == pytest.approx(0.063, abs=0.0005)
    assert drawn / allowed_g == pytest.approx(230, abs=4)
    assert water_ppm(allowed_g, 180) == pytest.approx(400)


def test_breathing_humid_air_only():
    gained = vapour_drawn(80.0, 80, 15)

    assert 1000 * gained == pytest.approx(0.34, abs=0.005)
    assert water_ppm(gained, 180) == pytest.approx(2.1, abs=0.05)
    assert 400 / water_ppm(gained, 180) == pytest.approx(185, abs=3)


def test_what_one_cooling_brings_into_the_oil_of_a_small_drive():
    # 80 ml of air over 180 ml of oil: 14.7 ml of water under water, 0.34 mg from damp air
    assert water_at_cooling(180.0, under_water=True) == pytest.approx(14.72 / (180 * 0.88) * 1e6, rel=0.002)
    assert water_at_cooling(180.0, under_water=True) == pytest.approx(232 * 400, rel=0.01)
    assert water_at_cooling(180.0, under_water=False) == pytest.approx(2.1, abs=0.05)


@pytest.mark.parametrize(
    "call",
    [
        lambda: head(-0.1),
        lambda: water_column(-1.0),
        lambda: suction(15.0, 80),
        lambda: suction(80.0, -300),
        lambda: drawn_volume(0.0, 80, 15),
        lambda: water_ppm(1.0, 0.0),
        lambda: water_at_cooling(0.0, under_water=True),
        lambda: water_at_cooling(180.0, under_water=True, hot=10.0),
        lambda: vapour_drawn(80.0, 80, 15, -1.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
