"""The rules about one part at one place, answered together and remembered: like words give like answers."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from inspector.judging.answers import Answer, answer_case, any_of
from inspector.judging.plan import Single, plan_for
from inspector.judging.states import Case, Item, State
from inspector.knowledge.kept import lately
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Rule

Key = tuple[str, str, str]
Asked = Mapping[str, tuple[Key, ...]]
"""For a property that is worked out: the looks that would settle it."""


class OpenRule(NamedTuple):
    """A rule that cannot be answered at a place, and the looks that would answer it."""

    rule: Rule
    place: str
    missing: tuple[Key, ...]


class ItemAnswers(NamedTuple):
    """What the rules about one part at one place answer; a number gives the order among all rules."""

    answers: tuple[tuple[tuple[str, str], Answer], ...]
    standing: tuple[tuple[int, Single, Case], ...]
    opened: tuple[tuple[int, OpenRule], ...]


@lately
def answer_item(
    knowledge: Knowledge,
    kind: str,
    item: Item,
    words: tuple[tuple[str, str | None], ...],
    asked: tuple[tuple[str, tuple[Key, ...]], ...],
) -> ItemAnswers:
    """Answer the rules about `item`, given its state as pairs and what would settle what is worked out."""
    state, settling = dict(words), dict(asked)
    answers: list[tuple[tuple[str, str], Answer]] = []
    standing: list[tuple[int, Single, Case]] = []
    opened: list[tuple[int, OpenRule]] = []
    for single in plan_for(knowledge, kind).by_item.get(item, ()):
        each = [answer_case(case, state) for case in single.cases]
        answer = any_of(each)
        answers.append((single.key, answer))
        if answer is True:
            standing.append((single.number, single, single.cases[each.index(True)]))
        elif answer is None:
            unsettled = [case for case, one in zip(single.cases, each, strict=True) if one is None]
            missing = [key for case in unsettled for key in open_looks(item, case, state, settling)]
            opened.append((single.number, OpenRule(single.rule, item[1], tuple(dict.fromkeys(missing)))))
    return ItemAnswers(tuple(answers), tuple(standing), tuple(opened))


def open_looks(item: Item, case: Case, state: State, asked: Asked) -> list[Key]:
    """The looks that keep one case open."""
    return [
        key
        for check in case
        if state.get(check.key, "") is None
        for key in asked.get(check.name, ((*item, check.name),))
    ]
