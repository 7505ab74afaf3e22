"""Worked problems of physics books about hot brakes, and two motorcycles of our own."""

import pytest

from inspector.quantities.brake_heat import (
    braking_power,
    cooled_temperature,
    descent_energy,
    descent_heat,
    disc_rise,
    motion_energy,
)

KMH = 3.6
POUND, FOOT = 0.45359237, 0.3048
FOOT_POUND, BTU = 1.3558179483314004, 1055.05585262


def test_openstax_truck_on_a_hill():
    # OpenStax College Physics, Example 14.2: 10 000 kg, 75.0 m, 100 kg of brakes, 800 J/(kg K)
    energy = descent_energy(10_000, 75.0, gravity=9.80)

    assert energy == pytest.approx(7.35e6)
    assert disc_rise(energy, 100.0, specific_heat=800) == pytest.approx(92, abs=0.2)


def test_car_stops_in_one_go():
    # problem book: 750 kg, 24 m/s, 15 kg of iron at 450 J/(kg K)
    energy = motion_energy(750, 24 * KMH)

    assert energy == pytest.approx(216e3)
    assert disc_rise(energy, 15.0, specific_heat=450) == pytest.approx(32)


def test_car_stops_in_us_units():
    # problem book: 3000 lb, 88 ft/s, four brakes of 10 lb, 0.130 BTU/(lb F); printed 361 306 ft lb and 90.3
    # F, the exact BTU gives 89.2 F
    energy = motion_energy(3000 * POUND, 88 * FOOT * KMH)
    rise = disc_rise(energy, 40 * POUND, specific_heat=0.130 * BTU / POUND * 1.8)

    assert energy / FOOT_POUND == pytest.approx(361_306, rel=1e-3)
    assert rise * 1.8 == pytest.approx(89.2, abs=0.15)
    assert rise * 1.8 == pytest.approx(90.3, rel=0.015)


def test_two_wheeler_down_one_in_ten():
    # rotor estimate: 100 kg, 100 m at 1:10, drop 9.95 m; 150 g at 500 J/(kg K)
    energy = descent_energy(100, 9.95, gravity=9.8)

    assert energy == pytest.approx(9751, abs=0.5)
    assert disc_rise(energy, 0.150, specific_heat=500) == pytest.approx(130, abs=0.1)
    assert disc_rise(motion_energy(100, 36.0), 0.150, specific_heat=500) == pytest.approx(67, abs=0.4)


def test_car_from_108():
    # question published, answer calculated: 1500 kg, 4 x 8 kg, 448 J/(kg K)
    assert disc_rise(motion_energy(1500, 108.0), 32.0, specific_heat=448) == pytest.approx(47.1, abs=0.05)
    assert disc_rise(motion_energy(1500, 108.0, 80.0), 32.0, specific_heat=448) == pytest.approx(21.2, abs=0.05)


@pytest.mark.parametrize(
    ("speed", "share", "discs", "rise"),
    [
        (100, 0.8, 2.4, 84),
        (100, 0.8, 2.6, 77),
        (100, 0.8, 1.3, 155),
        (100, 0.2, 0.9, 56),
        (130, 0.8, 2.6, 131),
    ],
)
def test_a_motorcycle_of_300_kg_stops(speed, share, discs, rise):
    # calculated
    assert disc_rise(motion_energy(300, speed), discs, share=share) == pytest.approx(rise, abs=0.6)


def test_energy_of_that_motorcycle():
    assert motion_energy(300, 100.0) == pytest.approx(115.7e3, abs=60)
    assert motion_energy(300, 130.0) == pytest.approx(195.6e3, abs=60)


@pytest.mark.parametrize(
    ("slope", "speed", "watts", "uncooled", "cooled", "barely_cooled"),
    [
        (0.08, 50, 1319, 430, 127, 212),
        (0.10, 40, 2027, 826, 199, 353),
        (0.12, 30, 2192, 1191, 218, 409),
    ],
)
def test_five_kilometres_of_pass(slope, speed, watts, uncooled, cooled, barely_cooled):
    # calculated: 300 kg, drag area 0.7 m2, rolling 0.02, no engine braking, discs 2.4 kg
    power = braking_power(300, speed, slope, drag_area=0.7, rolling=0.02)
    seconds = 5000 / (speed / KMH)
    capacity = 2.4 * 460

    def rise(cooling):
        return cooled_temperature(0.0, 0.0, power, cooling=cooling, heat_capacity=capacity, seconds=seconds)

    assert power == pytest.approx(watts, abs=1.5)
    assert disc_rise(power * seconds, 2.4) == pytest.approx(uncooled, abs=1)
    assert rise(10.0) == pytest.approx(cooled, abs=0.6)
    assert rise(5.0) == pytest.approx(barely_cooled, abs=0.6)


@pytest.mark.parametrize(
    ("film", "steady", "tau", "after_300"), [(30, 338, 203, 260), (60, 169, 102, 160), (90, 113, 68, 111)]
)
def test_ten_percent_at_sixty(film, steady, tau, after_300):
    # calculated: drag area 0.6 m2, rolling 0.015, four fifths to a front pair of 2.6 kg and 0.196 m2
    power = 0.8 * braking_power(300, 60.0, 0.10, drag_area=0.6, rolling=0.015)
    cooling, capacity = film * 0.196, 2.6 * 460

    def rise(seconds):
        return cooled_temperature(0.0, 0.0, power, cooling=cooling, heat_capacity=capacity, seconds=seconds)

    assert power / 0.8 == pytest.approx(2482, abs=2)
    assert capacity / cooling == pytest.approx(tau, abs=0.5)
    assert rise(1e5) == pytest.approx(steady, abs=0.6)
    assert rise(300.0) == pytest.approx(after_300, abs=0.6)


def test_where_the_air_suffices_the_brakes_stay_out():
    assert braking_power(300, 200.0, 0.05, drag_area=0.7, rolling=0.02) == 0


@pytest.mark.parametrize(
    "call",
    [
        lambda: motion_energy(0, 50.0),
        lambda: motion_energy(300, 50.0, 60.0),
        lambda: disc_rise(1e5, 0.0),
        lambda: disc_rise(1e5, 2.4, share=1.2),
        lambda: descent_energy(300, -1.0),
        lambda: cooled_temperature(20, 20, 100.0, cooling=0.0, heat_capacity=1000, seconds=10),
        lambda: descent_heat(300, 1000.0, 0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
