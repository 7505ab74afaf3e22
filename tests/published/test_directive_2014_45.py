"""Directive 2014/45/EU, Art. 7(3): several defects take the class of the worst."""

import pytest

from inspector.weighing.risk import combine_classes


@pytest.mark.parametrize(
    ("classes", "together"),
    [
        (["minor", "minor"], "minor"),
        (["minor", "major"], "major"),
        (["major", "dangerous"], "dangerous"),
        (["none", "minor"], "minor"),
        ([], "none"),
    ],
)
def test_the_more_serious_group_holds(classes, together):
    assert combine_classes(classes) == together
    assert combine_classes(reversed(classes)) == together


def test_an_unknown_class_is_refused():
    with pytest.raises(ValueError, match="no class"):
        combine_classes(["minor", "fatal"])  # type: ignore[list-item]
