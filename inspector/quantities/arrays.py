"""One number or an array of numbers, without paying for numpy until an array comes in.

The other modules of this folder write their formulas once, with these helpers, and serve both. A number is
anything Python counts as a float (whole numbers too); everything else is taken for an array of floats.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    FloatArray = NDArray[np.float64]
    IntArray = NDArray[np.int64]

Number = TypeVar("Number", float, "NDArray[np.float64]")

_ONE = (int, float)  # quicker to ask for than `int | float`


def is_number(value: object) -> bool:
    """Tell one number from an array."""
    return isinstance(value, _ONE)


def finite(name: str, value: Any) -> Any:
    """Return the value; refuse what is not a finite number. `name` opens the message."""
    if isinstance(value, _ONE):
        if not math.isfinite(value):
            raise ValueError(f"{name} must be a finite number, not {value}.")
        return value
    import numpy as np

    array = np.asarray(value, dtype=np.float64)
    if not np.isfinite(array).all():
        raise ValueError(f"{name} must hold finite numbers only.")
    return array


def _lowest(value: Any) -> float:
    return float(value) if is_number(value) else float(value.min(initial=math.inf))


def _highest(value: Any) -> float:
    return float(value) if is_number(value) else float(value.max(initial=-math.inf))


def not_negative(name: str, value: Any) -> Any:
    """Return the value; refuse what is below zero or not finite."""
    value = finite(name, value)
    if _lowest(value) < 0:
        raise ValueError(f"{name} must not be negative, found {_lowest(value):g}.")
    return value


def positive(name: str, value: Any) -> Any:
    """Return the value; refuse zero, negative and not finite ones."""
    value = finite(name, value)
    if _lowest(value) <= 0:
        raise ValueError(f"{name} must be more than zero, found {_lowest(value):g}.")
    return value


def between(name: str, value: Any, low: float, high: float) -> Any:
    """Return the value; refuse what lies outside `low` to `high` (both ends allowed)."""
    value = finite(name, value)
    if _lowest(value) < low or _highest(value) > high:
        found = _lowest(value) if _lowest(value) < low else _highest(value)
        raise ValueError(f"{name} must lie between {low:g} and {high:g}, found {found:g}.")
    return value


def inside(name: str, value: Any, low: float, high: float) -> Any:
    """Return the value; refuse what does not lie strictly between `low` and `high`."""
    value = finite(name, value)
    if _lowest(value) <= low or _highest(value) >= high:
        found = _lowest(value) if _lowest(value) <= low else _highest(value)
        raise ValueError(f"{name} must lie between {low:g} and {high:g}, ends excluded, found {found:g}.")
    return value


def as_given(result: Any, like: Number) -> Number:
    """Return a plain float for a single result, an array otherwise. `like` only tells the type checker."""
    answer: Number = _float_or_array(result)
    return answer


def _float_or_array(result: Any) -> Any:
    if is_number(result):
        return float(result)
    import numpy as np

    array = np.asarray(result, dtype=np.float64)
    return float(array) if array.ndim == 0 else array


def sqrt(value: Any) -> Any:
    """Square root of a number or of each member."""
    if is_number(value):
        return math.sqrt(value)
    import numpy as np

    return np.sqrt(value)


def exp(value: Any) -> Any:
    """The exponential of a number or of each member."""
    if is_number(value):
        return math.exp(value)
    import numpy as np

    return np.exp(value)


def log(value: Any) -> Any:
    """Natural logarithm of a number or of each member."""
    if is_number(value):
        return math.log(value)
    import numpy as np

    return np.log(value)


def log10(value: Any) -> Any:
    """Logarithm to base ten of a number or of each member."""
    if is_number(value):
        return math.log10(value)
    import numpy as np

    return np.log10(value)


def where(condition: Any, then: Any, otherwise: Any) -> Any:
    """Choose by a condition, or member by member by an array of them."""
    if is_number(condition) and is_number(then) and is_number(otherwise):
        return then if condition else otherwise
    import numpy as np

    return np.where(condition, then, otherwise)


def each(function: Any, values: Any) -> Any:
    """Apply a function of one number to a number or to each member: the same bits either way."""
    if is_number(values):
        return function(values)
    import numpy as np

    return np.asarray(np.frompyfunc(function, 1, 1)(values), dtype=np.float64)


def interpolate(at: Any, points: Sequence[float], values: Sequence[float]) -> Any:
    """Straight lines between rising points; the end values hold outside them."""
    if not is_number(at):
        import numpy as np

        return np.interp(at, points, values)
    if at <= points[0]:
        return float(values[0])
    if at >= points[-1]:
        return float(values[-1])
    place = bisect_right(points, at)
    low, high = points[place - 1], points[place]
    return values[place - 1] + (values[place] - values[place - 1]) * (at - low) / (high - low)


def phi(z: Any) -> Any:
    """Share of the standard normal distribution below z."""
    return each(lambda one: 0.5 * math.erfc(-one / math.sqrt(2)), z)


def phi_inverse(share: Any) -> Any:
    """The z below which this share of the standard normal distribution lies; 0 < share < 1."""
    from statistics import NormalDist

    return each(NormalDist().inv_cdf, share)
