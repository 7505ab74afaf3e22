"""Heat, gas, oil, threads, chains, batteries: what must hold for every figure in range."""

import itertools
from datetime import date, timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from inspector.quantities.brake_heat import (
    braking_power,
    cooled_temperature,
    descent_energy,
    descent_heat,
    disc_rise,
    motion_energy,
)
from inspector.quantities.breather import drawn_volume, head, suction, water_column
from inspector.quantities.chain import elongation, length_from_rollers
from inspector.quantities.coolant import mix_freezes_at
from inspector.quantities.electrics import charge_from_rest
from inspector.quantities.fasteners import stress_area, torque_for_other_surface
from inspector.quantities.fluids import boiling_from_age, boiling_point, fluid_match, water_from_age
from inspector.quantities.grades import chip_action, d610_grade, iso4628_ri
from inspector.quantities.identity import check_digit, check_digit_fits, model_years
from inspector.quantities.oils import engine_band, gear_band
from inspector.quantities.tightening import tightening
from inspector.quantities.torque_slip import unit_slip
from inspector.quantities.tyres import load_kg, pressure_at, tyre_date
from inspector.quantities.used_oil import iso4406_bounds, iso4406_number
from inspector.quantities.viscosity import viscosity_index

WARM = st.floats(-30, 150)
DAYS = st.dates(date(2000, 1, 3), date(2060, 12, 31))
GLYCOLS = st.sampled_from(["dot 3", "dot 4", "dot 5.1", "iso class 6"])
VIN_LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789"


@given(st.floats(50, 500), st.floats(0, 250), st.floats(0, 250))
def test_energy_of_two_slowings_adds_up(mass, speed, other):
    low, high = sorted((speed, other))

    parts = motion_energy(mass, high, low) + motion_energy(mass, low)
    assert parts == pytest.approx(motion_energy(mass, high))


@given(st.floats(0, 1e6), st.floats(0.1, 10), st.floats(0, 1))
def test_all_the_heat_is_in_the_disc(energy, mass, share):
    assert disc_rise(energy, mass, share=share) * mass * 460 == pytest.approx(energy * share)


@given(st.floats(0, 5000), st.floats(1, 20), st.floats(100, 5000), st.floats(0, 3600))
def test_cooling_never_makes_it_hotter_than_no_cooling(power, cooling, capacity, seconds):
    found = cooled_temperature(20, 20, power, cooling=cooling, heat_capacity=capacity, seconds=seconds)

    assert 20 - 1e-9 <= found <= 20 + power * seconds / capacity + 1e-6
    assert found <= 20 + power / cooling + 1e-6


@given(st.floats(1, 200), st.floats(0, 0.3))
def test_brakes_never_take_more_than_the_fall_gives(speed, slope):
    seconds = 100.0
    height = speed / 3.6 * seconds * slope / (1 + slope**2) ** 0.5

    spent = braking_power(300, speed, slope, drag_area=0.0, rolling=0.0) * seconds
    assert spent == pytest.approx(descent_energy(300, height), abs=1e-6)
    assert braking_power(300, speed, slope, drag_area=0.7, rolling=0.02) <= spent / seconds + 1e-9


@given(WARM, WARM)
def test_suction_grows_with_cooling_and_never_reaches_the_air(hot, cold):
    assume(hot >= cold)

    assert 0 <= suction(hot, cold) < 101.325
    assert drawn_volume(100.0, hot, cold) == pytest.approx(100 * suction(hot, cold) / 101.325)


@given(st.floats(0, 100))
def test_head_and_column_are_inverse(depth):
    assert water_column(head(depth)) == pytest.approx(depth)


@given(st.floats(0, 5), WARM, WARM)
def test_a_tyre_warmed_and_cooled_is_where_it_was(pressure, first, second):
    there = pressure_at(pressure, first, second)
    assume(there >= 0)

    assert pressure_at(there, second, first) == pytest.approx(pressure, abs=1e-9)
    assert (there > pressure) == (second > first) or there == pytest.approx(pressure)


@given(DAYS)
def test_a_code_made_from_a_day_gives_its_week_back(day):
    year, week, _ = day.isocalendar()
    assume(2000 <= year <= 2060)
    found = tyre_date(f"{week:02d}{year % 100:02d}", date(2061, 6, 1))

    assert found.earliest <= day < found.earliest + timedelta(days=7)


@given(st.integers(30, 94))
def test_a_higher_index_carries_more(index):
    assert load_kg(index) < load_kg(index + 1)


@given(GLYCOLS, st.floats(0, 10), st.floats(0, 10))
def test_more_water_never_boils_later(fluid, water, other):
    dry, wet = sorted((water, other))

    assert boiling_point(fluid, dry) >= boiling_point(fluid, wet)


@given(GLYCOLS, st.floats(0, 20))
def test_the_band_of_age_holds_its_ends_in_order(fluid, years):
    slow, fast = water_from_age(years)
    worst, best = boiling_from_age(fluid, years)

    assert 0 <= slow <= fast <= 8
    assert worst <= best


@given(st.sampled_from(["dot 3", "dot 4", "dot 5.1", "dot 5", "mineral oil"]))
def test_a_fluid_fits_itself_and_fit_is_mutual(fluid):
    assert fluid_match(fluid, fluid) == "same"
    for other in ("dot 3", "dot 4", "dot 5.1", "dot 5", "mineral oil"):
        assert fluid_match(fluid, other) == fluid_match(other, fluid)


@given(st.floats(0, 100), st.floats(0, 100))
def test_more_rust_never_earns_a_better_grade(share, other):
    less, more = sorted((share, other))

    assert 0 <= d610_grade(more) <= d610_grade(less) <= 10
    assert 0 <= iso4628_ri(less) <= iso4628_ri(more) <= 5


@given(st.integers(0, 20), st.integers(0, 20), st.integers(0, 20), st.integers(0, 5))
def test_more_pieces_never_ask_for_less(splinters, chips, smaller, extra):
    order = ["continue", "clean and check again", "replace"]
    less = chip_action(splinters=splinters, chips=chips, smaller=smaller)
    more = chip_action(splinters=splinters + extra, chips=chips + extra, smaller=smaller + extra)

    assert order.index(less) <= order.index(more)


@given(st.sampled_from(["10W-40", "75W-90", "90", "40"]), st.floats(0.1, 100))
def test_engine_and_gear_bands_are_asked_for_by_their_own_names(grade, viscosity):
    band = engine_band(grade) if grade in ("10W-40", "40") else gear_band(grade)

    assert band.holds(viscosity) == (band.low <= viscosity < band.high)


@given(st.floats(2, 60), st.floats(1.5, 15), st.floats(1.5, 15))
def test_an_oil_that_thins_less_has_a_higher_index(at_100, ratio, other):
    little, much = sorted((ratio, other))
    assume(much > little * 1.001)

    assert viscosity_index(at_100 * little, at_100) > viscosity_index(at_100 * much, at_100)


@given(st.floats(1e-6, 2_500_000))
def test_a_particle_count_lies_in_its_number(count):
    low, high = iso4406_bounds(iso4406_number(count))

    assert low < count <= high


@given(st.sampled_from([5, 6, 8, 10, 12, 14, 16]), st.floats(0.05, 0.4), st.floats(0.05, 0.4))
def test_more_friction_leaves_less_preload(diameter, friction, other):
    slippery, rough = sorted((friction, other))
    easy, hard = (tightening(diameter, 1.0, "8.8", mu) for mu in (slippery, rough))

    assert easy.preload >= hard.preload
    assert easy.preload < 640 * stress_area(float(diameter), 1.0)


@given(st.floats(1, 300), st.floats(0.08, 0.5), st.floats(0.08, 0.5))
def test_a_torque_for_another_surface_there_and_back(torque, factor, other):
    there = torque_for_other_surface(torque, factor, other)

    assert torque_for_other_surface(there, other, factor) == pytest.approx(torque)


@given(st.floats(1, 300))
def test_the_right_torque_is_no_slip(torque):
    assert unit_slip(torque, torque) == "none"


@given(st.floats(-5, 10), st.integers(5, 120), st.floats(5, 30))
def test_a_chain_measures_what_it_was_stretched(percent, pitches, pitch):
    length = pitches * pitch * (1 + percent / 100)

    assert elongation(length, pitches, pitch) == pytest.approx(percent, abs=1e-9)
    assert length_from_rollers(length - 5, length + 5) == pytest.approx(length)


@given(st.floats(10, 14), st.floats(10, 14), st.sampled_from(["flooded", "agm"]), st.floats(-20, 45))
def test_more_voltage_never_means_less_charge(volts, other, kind, temperature):
    low, high = sorted((volts, other))

    assert 0 <= charge_from_rest(low, kind, temperature) <= charge_from_rest(high, kind, temperature) <= 100


@given(st.sampled_from(["ethylene", "propylene"]), st.sampled_from(["mass", "volume"]), st.floats(0, 100))
def test_stronger_coolant_never_freezes_sooner(glycol, by, share):
    assert mix_freezes_at(glycol, min(share + 5, 100.0), by) <= mix_freezes_at(glycol, share, by) + 1e-9


@given(st.floats(100, 800), st.floats(0, 3000), st.floats(0, 1000), st.integers(1, 3))
def test_a_longer_descent_never_heats_less(mass, height, more, discs):
    order = ["normal", "strong", "more than these brakes shed"]

    low, high = (order.index(descent_heat(mass, fall, discs)) for fall in (height, height + more))
    assert low <= high
    assert order.index(descent_heat(mass + 50, height, discs)) >= low


@given(st.text(VIN_LETTERS, min_size=17, max_size=17))
def test_exactly_one_check_digit_fits(vin):
    fitting = [digit for digit in "0123456789X" if check_digit_fits(vin[:8] + digit + vin[9:])]

    assert fitting == [check_digit(vin)]


@given(st.text(VIN_LETTERS, min_size=17, max_size=17), st.integers(1980, 2100))
def test_model_years_lie_thirty_years_apart_and_not_in_the_future(vin, this_year):
    years = model_years(vin, this_year)

    assert all(1980 <= year <= this_year + 1 for year in years)
    assert all(later - earlier == 30 for earlier, later in itertools.pairwise(years))
