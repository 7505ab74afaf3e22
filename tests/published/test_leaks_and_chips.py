"""US Army technical manual TM 1-1520-238-23: chips on magnetic plugs."""

import pytest

from inspector.quantities.grades import chip_action, chip_size, pieces_action


@pytest.mark.parametrize(
    ("length", "width", "size"),
    [
        (4.9, 1.7, "splinter"),
        (1.7, 4.9, "splinter"),
        (4.0, 1.7, "chip"),
        (1.6, 1.6, "chip"),
        (6.0, 0.3, "smaller"),
    ],
)
def test_sizes_of_pieces(length, width, size):
    # 1/16 x 3/16 in and 1/16 x 1/16 in
    assert chip_size(length, width) == size


@pytest.mark.parametrize(
    ("found", "action"),
    [
        ({}, "continue"),
        ({"splinters": 1}, "replace"),
        ({"chips": 11}, "replace"),
        ({"chips": 10}, "clean and check again"),
        ({"smaller": 40}, "clean and check again"),
    ],
)
def test_published_actions_of_the_nose_gearbox(found, action):
    assert chip_action(**found) == action


def test_the_largest_piece_and_the_count_together():
    assert pieces_action(5.0, 2.0, 0) == "replace"
    assert pieces_action(2.0, 2.0, 11) == "replace"
    assert pieces_action(2.0, 2.0, 10) == "clean and check again"
    assert pieces_action(0.3, 0.2, 0) == "clean and check again"


@pytest.mark.parametrize(
    "call",
    [lambda: chip_size(0.0, 1.0), lambda: chip_action(chips=-1), lambda: pieces_action(float("nan"), 1.0, 0)],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
