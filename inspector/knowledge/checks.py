"""Conditions that span several entries: every name that is used exists and is used as its kind allows."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from inspector.knowledge.faults import Fault, not_allowed
from inspector.knowledge.model import Citation
from inspector.knowledge.rules import Member, Rule, Tests
from inspector.knowledge.walk_round import check_walk
from inspector.knowledge.yamlfile import Document, Path
from inspector.quantities.units import NotAnAmount, parse_amount

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

Documents = dict[tuple[Any, ...], tuple[Document, Path]]
_HORIZON_FUNCTIONS = ("age", "travelled")


def check(knowledge: Knowledge, documents: Documents) -> list[Fault]:
    """Every fault of the knowledge as a whole."""
    checker = _Checker(knowledge, documents)
    return [
        *checker.parts(),
        *checker.properties(),
        *checker.limits(),
        *checker.wear(),
        *checker.rules(),
        *checker.citations(),
        *check_walk(knowledge, documents),
    ]


class _Checker:
    def __init__(self, knowledge: Knowledge, documents: Documents) -> None:
        self.known = knowledge
        self.documents = documents

    def fault(self, key: tuple[Any, ...], path: Path, text: str) -> Fault:
        document, base = self.documents[key]
        return document.fault((*base, *path), text)

    def parts(self) -> Iterator[Fault]:
        """Every part of a machine can be observed, and every observable part is on some machine."""
        for kind, machine in self.known.machines.items():
            for part in (*machine.parts, *machine.optional_parts):
                if part not in self.known.properties or part not in machine.parts:
                    text = not_allowed("the part", part, self.known.properties)
                    yield self.fault(("machine", kind), ("parts", part), text)
        placed = {part for machine in self.known.machines.values() for part in machine.parts}
        for part, entries in self.known.properties.items():
            if part not in placed:
                yield self.fault(("property", part, next(iter(entries))), (), f"no machine has the part `{part}`")

    def properties(self) -> Iterator[Fault]:
        """Good words, tools, cautions and derivations of properties name things that exist."""
        for part, entries in self.known.properties.items():
            for name, entry in entries.items():
                key = ("property", part, name)
                if entry.kind in ("choice", "yes_no"):
                    for word in entry.good:
                        if word not in entry.words():
                            yield self.fault(key, ("good",), not_allowed("good", word, entry.words()))
                if entry.asked and entry.kind == "quantity":
                    for tool in entry.tools:
                        if tool not in self.known.tools:
                            yield self.fault(key, ("tools",), not_allowed("the tool", tool, self.known.tools))
                for caution in entry.cautions:
                    if caution not in self.known.cautions:
                        text = not_allowed("the caution", caution, self.known.cautions)
                        yield self.fault(key, ("cautions",), text)
                if entry.derive is not None:
                    for address in (*entry.derive.of, *([entry.derive.from_] if entry.derive.from_ else [])):
                        if self.find(part, address) is None:
                            yield self.fault(key, ("derive",), f"there is no property `{address}` to derive from")

    def find(self, part: str, address: str) -> tuple[str, str] | None:
        """The (part, property) meant by `property` or `part property`."""
        for candidate in ((part, address), tuple(address.rpartition(" ")[::2])):
            if candidate[1] in self.known.properties.get(candidate[0], {}):
                return candidate[0], candidate[1]
        return None

    def limits(self) -> Iterator[Fault]:
        """A limit belongs to a quantity, and its figures are amounts of that quantity."""
        for (part, name), entries in self.known.limits.items():
            given = [limit for limit, entry in entries.items() if entry.given_by_machine]
            for limit_name, entry in entries.items():
                key = ("limit", part, name, limit_name)
                prop = self.known.properties.get(part, {}).get(name)
                if prop is None or prop.kind not in ("quantity", "count"):
                    yield self.fault(key, (), f"`{part} {name}` is no quantity that can be observed")
                    continue
                if entry.given_by_machine and prop.kind == "count":
                    why = "a limit that stamp or manual may give belongs to a quantity; a count has no unit"
                    yield self.fault(key, (), why)
                if len(given) > 1:
                    yield self.fault(key, (), "only one limit of a property may be given by the machine")
                for bounds in (entry, *entry.cases.values()):
                    for text in (bounds.at_least, bounds.at_most):
                        if text is not None and prop.kind == "quantity":
                            try:
                                parse_amount(text, str(prop.dimension))
                            except NotAnAmount as error:
                                yield self.fault(key, (), str(error))
                for offset in (entry.below, entry.above):
                    if offset is not None and offset.limit not in entries:
                        yield self.fault(key, (), not_allowed("the limit", offset.limit, entries))
                if entry.by not in (None, "country") and entry.by not in self.known.properties[part]:
                    yield self.fault(key, ("by",), f"`{part}` has no property `{entry.by}`")

    def wear(self) -> Iterator[Fault]:
        """A prior rate belongs to a quantity, names a limit of it, and its figures are amounts of it."""
        for (part, name), prior in self.known.wear.items():
            key = ("wearprior", f"{part} {name}")
            prop = self.known.properties.get(part, {}).get(name)
            if prop is None or prop.kind != "quantity":
                yield self.fault(key, (), f"`{part} {name}` is no quantity that can be observed")
                continue
            carried = prop.derive.of if prop.derive else ()
            if prior.readings is not None and prior.readings not in carried:
                yield self.fault(key, ("readings",), f"`{name}` is not worked out from `{prior.readings}`")
            limits = self.known.limits.get((part, prior.limit_of or name), {})
            if prior.limit not in limits:
                yield self.fault(key, ("limit",), not_allowed("the limit", prior.limit, limits))
            for text in (prior.per_1000_km, prior.jitter, prior.new, prior.new_spread):
                try:
                    parse_amount(text, str(prop.dimension))
                except NotAnAmount as error:
                    yield self.fault(key, (), str(error))

    def citations(self) -> Iterator[Fault]:
        """Every source that is cited is in the list."""
        held: list[tuple[tuple[Any, ...], str, tuple[Citation, ...]]] = []
        for identity, rule in self.known.rules.items():
            held.append((("rule", identity), "sources", rule.sources))
        for (part, name), entries in self.known.limits.items():
            for limit_name, limit in entries.items():
                held.append((("limit", part, name, limit_name), "sources", limit.sources + limit.others_say))
        for (part, name), prior in self.known.wear.items():
            held.append((("wearprior", f"{part} {name}"), "sources", prior.sources))
        held.append((("stakes",), "sources", self.known.stakes.sources))
        for kind, table in (("caution", self.known.cautions), ("tool", self.known.tools)):
            for name, one in table.items():
                held.append(((kind, name), "sources", one.sources))
        for key, heading, citations in held:
            for citation in citations:
                if citation.source not in self.known.sources:
                    text = not_allowed("the source", citation.source, self.known.sources)
                    yield self.fault(key, (heading,), text)

    def rules(self) -> Iterator[Fault]:
        """Rules test what exists, gather what exists, and say only what they tested."""
        titles: dict[str, str] = {}
        for identity, rule in self.known.rules.items():
            key = ("rule", identity)
            if rule.title in titles:
                yield self.fault(key, ("title",), f"{titles[rule.title]} has the same title")
            titles[rule.title] = identity
            if len(rule.title) > 60:
                yield self.fault(key, ("title",), f"the title has {len(rule.title)} characters; at most 60")
            if rule.about not in self.known.properties:
                yield self.fault(key, ("about",), not_allowed("the part", rule.about, self.known.properties))
                continue
            for position, tests in enumerate(rule.cases()):
                path: Path = ("when",) if rule.when else ("when_any", position)
                yield from self._tests(key, path, rule.about, tests)
            for heading, position, member in rule.members():
                for one in member.alternatives():
                    yield from self._member(key, (heading, position), one)
            yield from self._names(key, rule)

    def _names(self, key: tuple[Any, ...], rule: Rule) -> Iterator[Fault]:
        for other in rule.gives_way_to:
            if other not in self.known.rules:
                yield self.fault(key, ("gives_way_to",), not_allowed("the rule", other, self.known.rules))
            elif self.known.rules[other].about != rule.about:
                yield self.fault(key, ("gives_way_to",), f"{other} is about another part")
        for caution in rule.cautions:
            if caution not in self.known.cautions:
                yield self.fault(key, ("cautions",), not_allowed("the caution", caution, self.known.cautions))
        tested = {name for tests in rule.cases() for name in tests}
        has_limit = any(test.word in ("beyond", "within", "reaches") for t in rule.cases() for test in t.values())
        allowed = ["place", *sorted(tested), *(["limit", "limit_origin"] if has_limit else [])]
        for name in rule.placeholders():
            if name not in allowed:
                yield self.fault(key, ("says",), not_allowed("the placeholder", name, allowed))

    def _tests(self, key: tuple[Any, ...], path: Path, part: str, tests: Tests) -> Iterator[Fault]:
        for name, test in tests.items():
            prop = self.known.properties.get(part, {}).get(name)
            here = (*path, name)
            if prop is None:
                known = self.known.properties.get(part)
                text = not_allowed(f"`{part}`: the property" if known else "the part", name if known else part,
                                   known or self.known.properties)  # fmt: skip
                yield self.fault(key, here, text)
            elif test.word in ("is", "one_of"):
                for word in test.values:
                    if word not in prop.words():
                        yield self.fault(key, here, not_allowed(f"`{name}`: the word", word, prop.words()))
            else:
                limits = self.known.limits_of(part, name)
                if test.values[0] not in limits:
                    yield self.fault(key, here, not_allowed(f"`{name}`: the limit", test.values[0], limits))
                function = prop.derive.function if prop.derive else None
                wears = (part, name) in self.known.wear
                if test.word == "reaches" and function not in _HORIZON_FUNCTIONS and not wears:
                    yield self.fault(key, here, "`reaches` fits only ages, distances travelled and what wears")

    def _member(self, key: tuple[Any, ...], path: Path, member: Member) -> Iterator[Fault]:
        if member.look is not None:
            yield from self._tests(key, path, member.look.part, member.look.tests)
        elif member.rule is not None and member.rule not in self.known.rules:
            yield self.fault(key, path, not_allowed("the rule", member.rule, self.known.rules))
        elif member.rule is not None and self.known.rules[member.rule].is_cause:
            yield self.fault(key, path, f"{member.rule} is a cause itself; a cause gathers no causes")
