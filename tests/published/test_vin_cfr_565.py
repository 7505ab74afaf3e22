"""49 CFR 565 and ISO 3779: vehicle identification numbers. The samples are those of the publications."""

import pytest

from inspector.quantities.identity import check_digit, check_digit_fits, clean_vin, model_years


@pytest.mark.parametrize(
    ("vin", "digit"),
    [
        ("1G4AH59H·5G118341".replace("·", "4"), "4"),  # Table V sample, sum 411
        ("1M8GDM9AXKP042788", "X"),  # sum 351, from memory
        ("11111111111111111", "1"),  # sum 89, from memory
    ],
)
def test_published_numbers(vin, digit):
    assert check_digit(vin) == digit
    assert check_digit_fits(vin)


def test_a_wrong_check_digit_is_found():
    assert check_digit("1G4AH59H05G118341") == "4"
    assert not check_digit_fits("1G4AH59H05G118341")


@pytest.mark.parametrize("letter", range(17))
def test_every_single_wrong_figure_is_found(letter):
    # modulo 11 and weights without a common factor: one wrong digit cannot hide, except in the place itself
    vin = "11111111111111111"
    wrong = vin[:letter] + "2" + vin[letter + 1 :]

    assert not check_digit_fits(wrong)


YEARS = "ABCDEFGHJKLMNPRSTVWXY123456789"


@pytest.mark.parametrize(("place", "code"), list(enumerate(YEARS)))
def test_model_year_table(place, code):
    # 1980 to 2009, then the letters again from 2010
    vin = "1" * 9 + code + "1" * 7

    assert model_years(vin, 2009)[0] == 1980 + place
    assert 2010 + place in model_years(vin, 2039)


@pytest.mark.parametrize(
    ("code", "years"),
    [
        ("H", (1987, 2017)),
        ("Y", (2000,)),
        ("9", (2009,)),
        ("T", (1996, 2026)),
        ("V", (1997,)),
        ("0", ()),
        ("U", ()),
    ],
)
def test_model_years_seen_in_2025(code, years):
    assert model_years("1" * 9 + code + "1" * 7, 2025) == years


def test_blanks_and_small_letters_do_not_matter():
    assert clean_vin(" 1m8gdm9a xkp04-2788 ") == "1M8GDM9AXKP042788"


@pytest.mark.parametrize(
    "typed", ["", "1" * 16, "1" * 18, "I" + "1" * 16, "O" + "1" * 16, "Q" + "1" * 16, "Ä" + "1" * 16]
)
def test_what_cannot_be_one_is_refused(typed):
    with pytest.raises(ValueError, match="vehicle identification number"):
        check_digit(typed)
