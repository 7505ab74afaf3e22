"""The only door to durable-rules. Takes productions and facts, gives conclusions, leaves nothing behind.

The calling pattern avoids every known way in which the engine hangs, crashes or loses a fact: one session at a
time, a sentinel fact first and last, facts of words only. Its matches are taken from it one by one here, without
the dispatcher that comes with it, which swallows errors and writes the session anew after every match.
"""

from __future__ import annotations

import contextlib
import json
import threading
from collections.abc import Iterable, Mapping
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


class Engine:
    """Productions compiled once; `run` judges one set of facts and may be called from several threads."""

    def __init__(self, productions: Iterable[Production]) -> None:
        self._lock = threading.Lock()
        self._conclusions: set[Conclusion] = set()
        self._number = 0
        self._next: list[Mapping[str, str]] = []
        self._wanted: dict[str, dict[str, set[str]]] = {}
        self._productions: dict[str, Production] = {}
        definition: dict[str, Any] = {"begin and end": {"any": [{"m": _BEGIN}, {"n": _END}], "run": _drawn}}
        for number, production in enumerate(productions):
            self._productions[f"p{number}"] = production
            for kind, ((key, words), *_) in production.patterns:
                self._wanted.setdefault(kind, {}).setdefault(key, set()).update(words)
            patterns = [{f"m{i}": _pattern(p)} for i, p in enumerate(production.patterns)]
            definition[f"p{number}"] = {"all": patterns, "run": _drawn}
        self._rules = durable.Ruleset(_NAME, None, definition)

    def run(self, facts: Iterable[Mapping[str, str]]) -> frozenset[Conclusion]:
        """Everything that follows from the facts, in whatever order they come. Raises RuleError."""
        with self._lock:
            self._conclusions, self._number, self._next = set(), 0, list(filter(self._wants, facts))
            # without a matched fact, deleting the session would read memory never written
            session = self._rules.assert_fact(self._payload(_BEGIN))
            try:
                while self._next:
                    self._round()
                return frozenset(self._conclusions)
            finally:
                self._drain(session)
                self._rules.delete_state(_SESSION)

    def close(self) -> None:
        """Give the compiled rules back; the engine never does so by itself."""
        durable_rules_engine.delete_ruleset(self._rules._handle)

    def _payload(self, fact: Mapping[str, str]) -> dict[str, str]:
        self._number += 1  # ids of our own: the engine's are hashes of the content and may collide
        return {"id": f"n{self._number}", "sid": _SESSION, **_clean(fact)}

    def _wants(self, fact: Mapping[str, str]) -> bool:
        """Whether a fact meets the first condition of any pattern; the others can do nothing."""
        return any(fact.get(key) in words for key, words in self._wanted.get(fact["kind"], {}).items())

    def _round(self) -> None:
        """Hand over the facts at hand; what follows from them is handed over in the next round, all at once."""
        payloads, self._next = [self._payload(fact) for fact in self._next], []
        # raised when some fact interests no rule; the others are stored all the same
        with contextlib.suppress(durable.MessageNotHandledException):
            self._rules.assert_facts(payloads)
        for name, matched in self._drain(self._rules.assert_fact(self._payload(_END))):
            production = self._productions.get(name)
            if production is not None:
                try:
                    self._conclude(production, matched)
                except Exception as error:
                    raise RuleError(production.rule, error) from error

    def _drain(self, session: int) -> list[tuple[str, Any]]:
        """Every match that waits in the session: the name of its production and the facts it matched."""
        found: list[tuple[str, Any]] = []
        started = durable_rules_engine.start_action_for_state(self._rules._handle, session)
        match = started[1] if started else None
        while match:
            found += json.loads(match).items()
            match = durable_rules_engine.complete_and_start_action(self._rules._handle, session)
        return found

    def _conclude(self, production: Production, matched: Any) -> None:
        place = production.place
        if place is None:
            place = matched["m0"]["place"]
        conclusion = Conclusion(production.kind, production.rule, place, production.slot)
        if conclusion not in self._conclusions:
            self._conclusions.add(conclusion)
            follows = conclusion.payload()
            if self._wants(follows):
                self._next.append(follows)


def _drawn(c: Any) -> None:
    """What a match leads to is drawn by the engine's caller; durable's own dispatcher is not used."""


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
