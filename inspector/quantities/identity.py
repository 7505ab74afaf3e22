"""What the seventeen characters of a vehicle identification number (VIN) say by themselves.

Knows no maker and keeps no number. A wrong check digit means something only where the law asks for one:
North America and China.
"""

from __future__ import annotations

from typing import Literal

CheckAnswer = Literal["fits", "does not fit", "not seventeen characters", "not known"]
YearAnswer = Literal["fits", "does not fit", "no year there", "not known"]

_LENGTH = 17
_CHECK_PLACE, _YEAR_PLACE = 8, 9
_VALUES = {
    **{str(digit): digit for digit in range(10)},
    **dict(zip("ABCDEFGH", range(1, 9), strict=True)),
    **dict(zip("JKLMNPR", (1, 2, 3, 4, 5, 7, 9), strict=True)),
    **dict(zip("STUVWXYZ", range(2, 10), strict=True)),
}
_WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
_YEAR_LETTERS = "ABCDEFGHJKLMNPRSTVWXY123456789"
_FIRST_YEAR, _CYCLE = 1980, 30


def clean_vin(typed: str) -> str:
    """The number in capitals without blanks, dots and dashes.

    Raises ValueError unless seventeen characters are left, all digits and capital letters but I, O and Q.
    Source: 49 CFR 565; ISO 3779.
    """
    vin = "".join(character for character in typed.upper() if character not in " .·-*")
    if len(vin) != _LENGTH:
        raise ValueError(f"A vehicle identification number has {_LENGTH} characters, this one has {len(vin)}.")
    strange = sorted({character for character in vin if character not in _VALUES})
    if strange:
        raise ValueError(f"No vehicle identification number holds {', '.join(strange)}. I, O and Q are left out.")
    return vin


def check_digit(vin: str) -> str:
    """The digit (or X) that belongs in ninth place. Raises as `clean_vin`. Source: 49 CFR 565."""
    total = sum(_VALUES[character] * weight for character, weight in zip(clean_vin(vin), _WEIGHTS, strict=True))
    remainder = total % 11
    return "X" if remainder == 10 else str(remainder)


def check_digit_fits(vin: str) -> bool:
    """Tell whether the ninth character is the check digit. Raises as `clean_vin`.

    Outside North America and China the place is free: `False` says nothing there.
    """
    return clean_vin(vin)[_CHECK_PLACE] == check_digit(vin)


def model_years(vin: str, this_year: int) -> tuple[int, ...]:
    """Model years the tenth character may stand for, up to next year; none where it stands for none.

    The letters come round every thirty years, and nothing in a motorcycle's number tells the rounds apart.
    Outside North America the place is often 0 or free. Raises as `clean_vin`. Source: 49 CFR 565.
    """
    place = _YEAR_LETTERS.find(clean_vin(vin)[_YEAR_PLACE])
    if place < 0:
        return ()
    return tuple(range(_FIRST_YEAR + place, this_year + 2, _CYCLE))


def check_answer(vin: str) -> CheckAnswer:
    """Whether the check digit fits, where the market asks for one; a number cut short is named as such."""
    return ("fits" if check_digit_fits(vin) else "does not fit") if _is_vin(vin) else "not seventeen characters"


def year_answer(vin: str, built: int, this_year: int) -> YearAnswer:
    """Whether a model year of the tenth place lies within a year of the year the machine was built.

    A model year may begin in the summer before, and a machine may be sold a year after. Source: 49 CFR 565; the
    year either way is an own choice.
    """
    years = model_years(vin, this_year) if _is_vin(vin) else ()
    if not years:
        return "no year there"
    return "fits" if any(abs(year - built) <= 1 for year in years) else "does not fit"


def _is_vin(vin: str) -> bool:
    try:
        clean_vin(vin)
    except ValueError:
        return False
    return True
