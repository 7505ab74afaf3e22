"""The engine's work for one record: stage after stage, each with the facts and all that was concluded before."""

from __future__ import annotations

from collections.abc import Sequence

from inspector.judging.engine import Engine
from inspector.judging.engine_limits import checked_productions
from inspector.judging.grammar import Conclusion, Payload
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge


@once
def engines_for(knowledge: Knowledge, kind: str) -> tuple[Engine, ...]:
    """An engine for each stage of a machine kind. Raises Faults beyond the engine's limits."""
    stages = [[one for one in checked_productions(knowledge, kind) if one.stage == stage] for stage in range(3)]
    return tuple(Engine(productions) for productions in stages if productions)


def conclude(facts: Sequence[Payload], engines: Sequence[Engine]) -> frozenset[Conclusion]:
    """Everything that follows from the facts. Raises RuleError."""
    known = list(facts)
    concluded: set[Conclusion] = set()
    for engine in engines:
        found = engine.run(known)
        known += [one.payload() for one in sorted(found)]
        concluded |= found
    return frozenset(concluded)
