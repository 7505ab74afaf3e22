"""The only door to durable-rules. Takes productions and facts, gives conclusions, leaves nothing behind.

The calling pattern avoids every known way in which the engine hangs, crashes or loses a fact: one session at a
time, a sentinel fact first and last, facts of words only, actions that only record, errors kept and raised here.
"""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Callable, Iterable, Mapping
from typing import Any

import durable.engine as durable
import durable_rules_engine

from inspector.judging.grammar import Conclusion, Pattern, Payload, Production

_NAME = "inspector"
_SESSION = "s"
_BEGIN, _END = {"kind": "begin"}, {"kind": "end"}


class RuleError(Exception):
    """An error inside the engine while a rule was at work; the message names the rule."""

    def __init__(self, rule: str, cause: BaseException) -> None:
        self.rule = rule
        super().__init__(f"{rule}: {type(cause).__name__}: {cause}")


class _Host(durable.Host):  # type: ignore[misc]
    def _run(self) -> None:
        """No timer threads: they race with the deletion of sessions."""


class Engine:
    """Productions compiled once; `run` judges one set of facts and may be called from several threads."""

    def __init__(self, productions: Iterable[Production]) -> None:
        self._lock = threading.Lock()
        self._host = _Host()
        self._conclusions: set[Conclusion] = set()
        self._error: tuple[str, BaseException] | None = None
        self._number = 0
        self._next: list[Mapping[str, str]] = []
        self._asked_for: set[tuple[str, str]] = set()
        definition: dict[str, Any] = {"begin and end": self._sentinels()}
        for number, production in enumerate(productions):
            for pattern in production.patterns:
                self._asked_for |= {(pattern.kind, rule) for rule in dict(pattern.conditions).get("rule", ())}
            definition[f"p{number}"] = {
                "all": [{f"m{i}": _pattern(p)} for i, p in enumerate(production.patterns)],
                "run": self._action(production),
            }
        self._host.set_rulesets({_NAME: definition})

    def run(self, facts: Iterable[Mapping[str, str]]) -> frozenset[Conclusion]:
        """Everything that follows from the facts, in whatever order they come. Raises RuleError."""
        with self._lock:
            self._conclusions, self._error, self._number = set(), None, 0
            self._next = list(facts)
            try:
                self._put(_BEGIN)
                while self._next:
                    self._round()
                if self._error is not None:
                    raise RuleError(self._error[0], self._error[1]) from self._error[1]
                return frozenset(self._conclusions)
            finally:
                self._host.delete_state(_NAME, _SESSION)

    def close(self) -> None:
        """Give the compiled rules back; the engine never does so by itself."""
        ruleset = self._host.get_ruleset(_NAME)
        durable_rules_engine.delete_ruleset(ruleset._handle)

    @staticmethod
    def _sentinels() -> dict[str, Any]:
        def nothing(c: Any) -> None:
            """Without a matched fact, deleting the session would read memory never written."""

        return {"any": [{"m": {"kind": "begin"}}, {"n": {"kind": "end"}}], "run": nothing}

    def _payload(self, fact: Mapping[str, str]) -> dict[str, str]:
        self._number += 1  # ids of our own: the engine's are hashes of the content and may collide
        return {"id": f"n{self._number}", "sid": _SESSION, **_clean(fact)}

    def _put(self, fact: Mapping[str, str]) -> None:
        with contextlib.suppress(durable.MessageNotHandledException):  # no rule asks for this fact
            self._host.assert_fact(_NAME, self._payload(fact))

    def _round(self) -> None:
        """Hand over the facts at hand; what follows from them is handed over in the next round, all at once."""
        payloads, self._next = [self._payload(fact) for fact in self._next], []
        # raised when some fact interests no rule; the others are stored all the same
        with contextlib.suppress(durable.MessageNotHandledException):
            self._host.assert_facts(_NAME, payloads)
        self._put(_END)  # starts every action that is still pending

    def _action(self, production: Production) -> Callable[[Any], None]:
        def act(c: Any) -> None:  # exactly one parameter: with two the engine would wait for a callback
            if self._error is not None:
                return
            try:
                self._conclude(production, c)
            except BaseException as error:
                self._error = (production.rule, error)

        return act

    def _conclude(self, production: Production, c: Any) -> None:
        place = production.place
        if place is None:
            place = c.m0["place"]
        if not isinstance(place, str):
            raise ValueError("the fact that was matched names no place")
        conclusion = Conclusion(production.kind, production.rule, place, production.slot)
        if conclusion not in self._conclusions:
            self._conclusions.add(conclusion)
            if (conclusion.kind, conclusion.rule) in self._asked_for:
                self._next.append(conclusion.payload())


def _pattern(pattern: Pattern) -> dict[str, Any]:
    """One of several words under one key can be the case at a time, so `$or` cannot match twice."""
    conditions = [
        {key: words[0]} if len(words) == 1 else {"$or": [{key: word} for word in words]}
        for key, words in pattern.conditions
    ]
    return {"$and": [{"kind": pattern.kind}, *conditions]}


def _clean(fact: Mapping[str, str]) -> Payload:
    """Refuse what the engine would compare wrongly: anything but short words under plain names."""
    for key, value in fact.items():
        if not isinstance(value, str) or len(value) > 1000 or not key.isidentifier() or key in ("id", "sid"):
            raise ValueError(f"the fact {key}={value!r:.80} is not a short word under a plain name")
    return dict(fact)
