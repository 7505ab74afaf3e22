"""Two sets of results side by side: the same gives nothing, and whatever is changed is told."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from functools import cache
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.reporting.carried import plain_results, results_fingerprint
from inspector.reporting.compare import differences
from tests.reporting.cases import worn

PASSED_OVER = {"label", "labels", "symptoms", "explained_by", "photo", "scale"}
PASSED_OVER |= {"version", "rules_judged", "shown_units"}


@cache
def results() -> dict[str, Any]:
    return plain_results(worn())


def leaves(node: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The way to every word and number that counts."""
    if isinstance(node, dict):
        for name, one in node.items():
            if name not in PASSED_OVER:
                yield from leaves(one, (*path, name))
    elif isinstance(node, list):
        for place, one in enumerate(node):
            yield from leaves(one, (*path, place))
    else:
        yield path


def changed(path: tuple[Any, ...], value: Any) -> dict[str, Any]:
    other = copy.deepcopy(results())
    node: Any = other
    for step in path[:-1]:
        node = node[step]
    node[path[-1]] = value
    return other


@settings(deadline=None)
@given(st.data())
def test_any_word_or_number_that_is_changed_is_told(data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(sorted(leaves(results()), key=str)))
    other = changed(path, "quite another word")

    assert differences(results(), other)
    assert differences(other, results())
    assert results_fingerprint(other) != results_fingerprint(results())


@settings(deadline=None)
@given(st.permutations(sorted(results())))
def test_the_order_in_which_results_are_written_changes_nothing(order: list[str]) -> None:
    again = json.loads(json.dumps({name: results()[name] for name in order}))

    assert differences(results(), again) == []
    assert results_fingerprint(again) == results_fingerprint(results())


@settings(deadline=None)
@given(st.data())
def test_an_entry_taken_out_is_gone_and_put_in_is_new(data: st.DataObject) -> None:
    place = data.draw(st.integers(0, len(results()["findings"]) - 1))
    other = copy.deepcopy(results())
    title = other["findings"].pop(place)["title"]

    assert [(d.where, d.kind) for d in differences(results(), other)] == [("findings", "gone")]
    (found,) = differences(other, results())
    assert (found.where, found.kind) == ("findings", "new")
    assert title in found.what
