"""The wear filter without jitter and prior knowledge is a line fit: published fits must come out of it.

The data were written down from memory; that the published results come out of them is the check.
"""

import numpy as np
import pytest

from inspector.quantities.wear import WearState, after, distance_left, look, start, surprise

VAGUE = 1e4


def line(points: list[tuple[float, float]], uncertainty: float, begin: float = 0.0) -> WearState[float]:
    """State at the last point, after a start that knows nothing."""
    state = start(0.0, VAGUE, 0.0, VAGUE)
    for place, reading in sorted(points):
        state = look(after(state, place - begin), reading, uncertainty)
        begin = place
    return state


# Statistical Methods for Reliability Data (1998), Example 13.10: laser current in
# percent over its first value, every 250 h; a laser has failed at 10 %. Hours printed there for the fifteen
# lines.
LASERS = {
    3702: "0 .47 .93 2.11 2.72 3.51 4.34 4.91 5.48 5.99 6.72 7.13 8.00 8.92 9.49 9.87 10.94",
    4194: "0 .71 1.22 1.90 2.30 2.87 3.75 4.42 4.99 5.51 6.07 6.64 7.16 7.78 8.42 8.91 9.28",
    5847: "0 .71 1.17 1.73 1.99 2.53 2.97 3.30 3.94 4.16 4.45 4.89 5.27 5.69 6.02 6.45 6.88",
    6172: "0 .36 .62 1.36 1.95 2.30 2.95 3.39 3.79 4.11 4.50 4.72 4.98 5.28 5.61 5.95 6.14",
    5301: "0 .27 .61 1.11 1.77 2.06 2.58 2.99 3.38 4.05 4.63 5.24 5.62 6.04 6.32 7.10 7.59",
    3592: "0 .36 1.39 1.95 2.86 3.46 3.81 4.53 5.35 5.92 6.71 7.70 8.61 9.15 9.95 10.49 11.01",
    6051: "0 .36 .92 1.21 1.46 1.93 2.39 2.68 2.94 3.42 4.09 4.58 4.84 5.11 5.57 6.11 7.17",
    6538: "0 .46 1.07 1.42 1.77 2.11 2.40 2.78 3.02 3.29 3.75 4.16 4.76 5.16 5.46 5.81 6.24",
    5110: "0 .51 .93 1.57 1.96 2.59 3.29 3.61 4.11 4.60 4.91 5.34 5.84 6.40 6.84 7.20 7.88",
    3306: "0 .41 1.49 2.38 3.00 3.84 4.50 5.25 6.26 7.05 7.80 8.32 8.93 9.55 10.45 11.28 12.21",
    5326: "0 .44 1.00 1.57 1.96 2.51 2.84 3.47 4.01 4.51 4.80 5.20 5.66 6.20 6.54 6.96 7.42",
    4995: "0 .39 .80 1.35 1.74 2.98 3.59 4.03 4.44 4.79 5.22 5.48 5.96 6.23 6.99 7.37 7.88",
    4721: "0 .30 .74 1.52 1.85 2.39 2.95 3.51 3.92 5.03 5.47 5.84 6.50 6.94 7.39 7.85 8.09",
    5689: "0 .44 .70 1.05 1.35 1.80 2.55 2.83 3.39 3.72 4.09 4.83 5.41 5.76 6.14 6.51 6.88",
    6102: "0 .51 .83 1.29 1.52 1.91 2.27 2.78 3.42 3.78 4.11 4.38 4.63 5.38 5.84 6.16 6.62",
}
FAILED_AT = 10.0
NEW = 20.0  # the filter looks at what is left, so the current is taken from here
LAST_READING = 4.0


def laser_line(readings: str, skip: int = 0) -> WearState[float]:
    points = [(0.25 * i, NEW - float(percent)) for i, percent in enumerate(readings.split())]
    return line(points[skip:], 0.2, begin=points[skip][0])


@pytest.mark.parametrize(("hours", "readings"), LASERS.items())
def test_pseudo_failure_time_of_a_laser(hours, readings):
    state = laser_line(readings)
    crossing = LAST_READING + (state.thickness - FAILED_AT) / state.rate

    assert 1000 * crossing == pytest.approx(hours, abs=5)
    if hours > 4000:
        left = distance_left(state, FAILED_AT, 0.5)
        assert 1000 * (LAST_READING + left) == pytest.approx(hours, abs=5)
    else:
        assert distance_left(state, FAILED_AT, 0.5) == 0


@pytest.mark.parametrize(("hours", "without_first"), [(3702, 3701), (4194, 4201), (5847, 5918)])
def test_leaving_out_the_first_reading_misses_the_published_times(hours, without_first):
    # calculated: the wrong fit gives other hours, so the test above can tell them apart
    state = laser_line(LASERS[hours], skip=1)

    assert 1000 * (LAST_READING + (state.thickness - FAILED_AT) / state.rate) == pytest.approx(
        without_first, abs=5
    )


NORRIS = (
    "0.1 0.2|338.8 337.4|118.1 118.2|888.0 884.6|9.2 10.1|228.1 226.5|668.5 666.3|998.5 996.3|449.1 448.6|"
    "778.9 777.0|559.2 558.2|0.3 0.4|0.1 0.6|778.1 775.5|668.8 666.9|339.3 338.0|448.9 447.5|10.8 11.6|"
    "557.7 556.0|228.3 228.1|998.0 995.8|888.8 887.6|119.6 120.2|0.3 0.3|0.6 0.3|557.6 556.8|339.3 339.1|"
    "888.0 887.2|998.5 999.0|778.9 779.0|10.2 11.1|117.6 118.3|228.9 229.2|668.4 669.1|449.2 448.9|0.2 0.5"
)


def test_nist_norris():
    # NIST StRD, linear, certified -0.262323073774029 + 1.00211681802045 x
    points = [(float(x), float(y)) for y, x in (pair.split() for pair in NORRIS.split("|"))]
    state = line(points, 1.0, begin=0.2)

    assert -state.rate == pytest.approx(1.00211681802045, rel=1e-9)
    assert state.thickness + state.rate * 999.0 == pytest.approx(-0.262323073774029, abs=1e-7)


def test_nist_noint1():
    # NIST StRD, line through the origin, certified 2.07438016528926, sd 0.0165289256198347
    state = start(0.0, 0.0, 0.0, 1e3)
    for place, reading in zip(range(60, 71), range(130, 141), strict=True):
        way = 60 if place == 60 else 1
        state = look(after(state, way), float(reading), 3.56753034006338)

    assert -state.rate == pytest.approx(2.07438016528926, rel=1e-8)
    assert state.rate_variance**0.5 == pytest.approx(0.0165289256198347, rel=1e-7)


def test_gum_h3_extrapolates_a_thermometer_to_thirty_degrees():
    # JCGM 100 (GUM), H.3: corrections at eleven temperatures; printed b(30) = -0.1494, u = 0.0041
    temperatures = (21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511)
    corrections = (-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160)
    shift = 1.0  # keeps the readings positive
    points = list(zip(temperatures, (shift + b for b in corrections), strict=True))

    state = line(points, 0.0035, begin=temperatures[0])
    at_thirty = after(state, 30 - temperatures[-1])

    assert -state.rate == pytest.approx(0.00218, abs=5e-6)
    assert state.rate_variance**0.5 == pytest.approx(0.00067, abs=5e-6)
    assert at_thirty.thickness - shift == pytest.approx(-0.1494, abs=5e-5)
    assert at_thirty.thickness_variance**0.5 == pytest.approx(0.0041, abs=5e-5)


def wear_of(readings: str) -> list[float]:
    return [float(percent) for percent in readings.split()]


def test_drift_of_the_lasers():
    # calculated: mean drift 2.038 % in 1000 h, spread between units a quarter of it, jitter 0.109
    paths = np.array([wear_of(readings) for readings in LASERS.values()])
    drifts = paths[:, -1] / LAST_READING
    off_line = np.diff(paths, axis=1) - 0.25 * drifts[:, None]

    assert drifts.mean() == pytest.approx(2.038, abs=0.002)
    assert drifts.std(ddof=1) / drifts.mean() == pytest.approx(0.235, abs=0.006)
    assert (off_line**2).mean() / 0.25 == pytest.approx(0.1094, abs=0.0005)


def test_the_forecast_from_half_the_history_holds_for_the_other_half():
    # readings up to 2000 h, prior rate from the other fourteen lasers, forecast for 4000 h: at a chance of
    # nine in ten, thirteen or fourteen of fifteen should be inside (fourteen in the worked case)
    paths = np.array([wear_of(readings) for readings in LASERS.values()])
    drifts = paths[:, -1] / LAST_READING
    inside = 0
    for place, path in enumerate(paths):
        others = np.delete(drifts, place)
        state = start(NEW, 0.0, float(others.mean()), float(others.std(ddof=1)))
        for percent in path[1:9]:
            state = look(after(state, 0.25, 0.1094), NEW - percent, 0.05)
        inside += abs(surprise(after(state, 2.0, 0.1094), NEW - path[-1], 0.05)) < 1.645

    assert inside == 14


def test_bedding_in_does_not_pass_for_steady_wear():
    # same book, sliding metal wear, specimen 101 at 10 g: micrometres after so many hundred cycles; the
    # line through the first readings foretells far more wear than came
    cycles = (2, 5, 10, 20, 50, 100, 200, 500)
    worn = (3.168, 4.063, 4.453, 4.744, 5.838, 6.786, 7.737, 9.593)
    points = [(float(place), NEW - depth) for place, depth in zip(cycles, worn, strict=True)]

    state = line(points[:4], 0.2, begin=2.0)

    assert surprise(after(state, 480.0), points[-1][1], 0.2) > 3
