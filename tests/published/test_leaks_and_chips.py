"""US Army technical manuals: leak classes (PMCS), chips on magnetic plugs (TM 1-1520-238-23)."""

import pytest

from inspector.quantities.grades import chip_action, chip_size, debris_code, leak_class


@pytest.mark.parametrize(
    ("sign", "letter"),
    [
        ("dry", "none"),
        ("wet without drops", "I"),
        ("drops that do not fall", "II"),
        ("drops that fall", "III"),
    ],
)
def test_leak_classes(sign, letter):
    assert leak_class(sign) == letter


def test_another_word_for_a_leak_is_refused():
    with pytest.raises(ValueError, match="no sign of a leak"):
        leak_class("a bit damp")  # type: ignore[arg-type]


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
    ("gearbox", "found", "action"),
    [
        ("small", {}, "continue"),
        ("large", {}, "continue"),
        ("small", {"sand_like": True}, "replace"),
        ("small", {"splinters": 1}, "replace"),
        ("small", {"chips": 11}, "replace"),
        ("small", {"chips": 10}, "clean and check again"),
        ("small", {"smaller": 40}, "clean and check again"),
        ("large", {"splinters": 5}, "clean and check again"),
        ("large", {"splinters": 6}, "drain, flush and look into it"),
        ("large", {"chips": 11}, "drain, flush and look into it"),
        ("large", {"splinters": 5, "chips": 6}, "drain, flush and look into it"),
    ],
)
def test_published_actions(gearbox, found, action):
    assert chip_action(gearbox, **found) == action


def test_sand_in_the_large_gearbox_is_drained():
    # no action is published for this cell; ours
    assert chip_action("large", sand_like=True) == "drain, flush and look into it"


@pytest.mark.parametrize(
    ("found", "code"),
    [
        ({"longest": 0}, 0),
        ({"longest": 0.05}, 2),
        ({"longest": 0.3}, 3),
        ({"longest": 0.8}, 4),
        ({"longest": 2.0, "chips": 2}, 5),
        ({"longest": 5.0, "splinters": 1}, 5),
    ],
)
def test_our_own_debris_codes(found, code):
    assert debris_code(**found) == code


@pytest.mark.parametrize(
    "call",
    [
        lambda: chip_size(0.0, 1.0),
        lambda: chip_action("small", chips=-1),
        lambda: chip_action("middle"),
        lambda: debris_code(float("nan")),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|no gearbox"):
        call()
