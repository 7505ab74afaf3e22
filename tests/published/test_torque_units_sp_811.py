"""NIST SP 811, Appendix B.8: torque units, and the slips between them."""

import pytest

from inspector.quantities.torque_slip import FOOT_POUND, unit_slip


def test_foot_pound():
    # 1 lbf·ft = 1.355 817 948 N·m; 1 N·m = 0.737 562 149 lbf·ft
    assert pytest.approx(1.355817948, abs=5e-10) == FOOT_POUND
    assert pytest.approx(0.737562149, abs=5e-10) == 1 / FOOT_POUND
    assert pytest.approx(0.45359237 * 9.80665 * 0.3048, rel=1e-15) == FOOT_POUND


@pytest.mark.parametrize(("foot_pounds", "newton_metres"), [(15, 20.34), (50, 67.79), (100, 135.58)])
def test_examples(foot_pounds, newton_metres):
    assert foot_pounds * FOOT_POUND == pytest.approx(newton_metres, abs=0.005)


@pytest.mark.parametrize(
    ("applied", "required", "slip"),
    [
        (50.0, 50.0, "none"),
        (50 * FOOT_POUND, 50.0, "newton metres set as foot pounds"),
        (50.0, 50 * FOOT_POUND, "foot pounds set as newton metres"),
        (120.0, 10.0, "inch pounds set as foot pounds"),
        (68.0, 50.0, "newton metres set as foot pounds"),
        (36.0, 50.0, "foot pounds set as newton metres"),
        (60.0, 50.0, "none"),
        (40.0, 50.0, "none"),
    ],
)
def test_a_slip_of_scale_has_its_own_ratio(applied, required, slip):
    # a figure in N·m set on a lbf·ft scale gives too much, one in lbf·ft set on an N·m scale too little
    assert unit_slip(applied, required) == slip


@pytest.mark.parametrize(("applied", "required"), [(0.0, 50.0), (50.0, 0.0), (float("nan"), 50.0)])
def test_nonsense_is_refused(applied, required):
    with pytest.raises(ValueError, match="must"):
        unit_slip(applied, required)
