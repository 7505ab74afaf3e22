"""Yes, no or open: what a rule answers when some looks were not made (three-valued logic, Kleene)."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.judging.states import Case, State

Answer = bool | None


def all_of(answers: Iterable[Answer]) -> Answer:
    """No when any is no, else open when any is open, else yes."""
    result: Answer = True
    for answer in answers:
        if answer is False:
            return False
        if answer is None:
            result = None
    return result


def any_of(answers: Iterable[Answer]) -> Answer:
    """Yes when any is yes, else open when any is open, else no."""
    result: Answer = False
    for answer in answers:
        if answer is True:
            return True
        if answer is None:
            result = None
    return result


def answer_case(case: Case, state: State) -> Answer:
    """Whether all tests of a case hold in one state: `all_of` written out, because it runs a thousand times."""
    result: Answer = True
    for key, accepted, _, _ in case:
        found = state.get(key, "")
        if found is None:
            result = None
        elif found not in accepted:
            return False
    return result
