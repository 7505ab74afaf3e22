"""ASTM D610-08 (2019) and ISO 4628-3:2016, both seen second hand."""

import numpy as np
import pytest

from inspector.quantities.grades import d610_grade, iso4628_ri


@pytest.mark.parametrize(
    ("upper_edge", "grade"),
    [(0.01, 10), (0.03, 9), (0.1, 8), (0.3, 7), (1, 6), (3, 5), (10, 4), (16, 3), (33, 2), (50, 1)],
)
def test_d610_table(upper_edge, grade):
    assert d610_grade(upper_edge) == grade
    assert d610_grade(upper_edge * 1.0001) == grade - 1


@pytest.mark.parametrize(("share", "degree"), [(0, 0), (0.05, 1), (0.5, 2), (1, 3), (8, 4), (40, 5), (50, 5)])
def test_iso_4628_3_pictures(share, degree):
    assert iso4628_ri(share) == degree


@pytest.mark.parametrize(("cut", "below"), [(0.158, 1), (0.707, 2), (2.82, 3), (18.8, 4)])
def test_cuts_between_the_pictures(cut, below):
    # calculated: geometric middles, 0.16 / 0.71 / 2.8 / 18.9 %
    assert iso4628_ri(cut) == below
    assert iso4628_ri(cut * 1.01) == below + 1


@pytest.mark.parametrize(
    ("share", "d610", "degree"), [(2, 5, 3), (12, 3, 4), (0.2, 7, 2), (0, 10, 0), (100, 0, 5)]
)
def test_both_scales(share, d610, degree):
    # calculated from both tables
    assert (d610_grade(share), iso4628_ri(share)) == (d610, degree)


def test_arrays_give_the_same_grades():
    shares = np.array([0.0, 0.01, 0.2, 2.0, 12.0, 100.0])

    assert d610_grade(shares).tolist() == [d610_grade(float(share)) for share in shares]
    assert iso4628_ri(shares).tolist() == [iso4628_ri(float(share)) for share in shares]


@pytest.mark.parametrize("share", [-1.0, 101.0, float("nan"), float("inf")])
@pytest.mark.parametrize("scale", [d610_grade, iso4628_ri])
def test_a_share_outside_the_whole_is_refused(scale, share):
    with pytest.raises(ValueError, match="rusted share"):
        scale(share)
