"""Work things out once for each body of knowledge: kept with it, and gone with it.

The results are shared, so they must not be changed. What a function raises is not remembered.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TYPE_CHECKING, TypeVar, TypeVarTuple

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

Arguments = TypeVarTuple("Arguments")
Result = TypeVar("Result")
_MOST_LATELY = 4000


def once(make: Callable[[Knowledge, *Arguments], Result]) -> Callable[[Knowledge, *Arguments], Result]:
    """Remember what `make` gives for each set of (hashable) arguments, of which there are only so many."""
    return _remembering(make, None)


def lately(make: Callable[[Knowledge, *Arguments], Result]) -> Callable[[Knowledge, *Arguments], Result]:
    """The same for what has no end of variants: only the results that came last are kept."""
    return _remembering(make, _MOST_LATELY)


def _remembering(
    make: Callable[[Knowledge, *Arguments], Result], most: int | None
) -> Callable[[Knowledge, *Arguments], Result]:
    @wraps(make)
    def remembered(knowledge: Knowledge, *args: *Arguments) -> Result:
        results: dict[tuple[*Arguments], Result] = knowledge.worked_out.setdefault(make, {})
        if args not in results:
            if most is not None and len(results) >= most:
                del results[next(iter(results))]
            results[args] = make(knowledge, *args)
        return results[args]

    return remembered
