"""A naive fixpoint over productions: slow, obvious, and written without a look at the engine's module."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.judging.grammar import Conclusion, Payload, Production


def fixpoint(productions: Iterable[Production], facts: Iterable[Payload]) -> frozenset[Conclusion]:
    """Fire every production on every fact until nothing new follows."""
    rules, known = list(productions), [dict(fact) for fact in facts]
    concluded: set[Conclusion] = set()
    while True:
        new: set[Conclusion] = set()
        for rule in rules:
            matches = [
                [f for f in known if f["kind"] == p.kind and all(f.get(k) in words for k, words in p.conditions)]
                for p in rule.patterns
            ]
            if all(matches):
                places = [rule.place] if rule.place is not None else [f["place"] for f in matches[0]]
                new |= {Conclusion(rule.kind, rule.rule, place, rule.slot) for place in places}
        if new <= concluded:
            return frozenset(concluded)
        known += [conclusion.payload() for conclusion in new - concluded]
        concluded |= new
