"""Rules and observables as plain text for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from inspector.knowledge.library import Knowledge
from inspector.knowledge.model import Citation
from inspector.knowledge.observables import Property
from inspector.knowledge.rules import Example, Member, Rule, Test, Tests
from inspector.quantities.units import units_of
from inspector.reporting.lines import bullet, heading, paragraph


def rule_list(knowledge: Knowledge, width: int) -> str:
    """All rules by system, with their class."""
    lines: list[str] = []
    for system in dict.fromkeys(rule.system for rule in knowledge.rules.values()):
        lines += heading(system.replace("_", " "), width)
        for rule in knowledge.rules.values():
            if rule.system == system:
                kind = "suspected cause" if rule.is_suspicion else rule.class_
                lines += bullet(f"{rule.id}: {rule.title} ({kind})", width)
    lines += ["", f"{len(knowledge.rules)} rules. One in full: inspector rules ID"]
    return "\n".join(lines)


def rule_text(rule: Rule, knowledge: Knowledge, width: int) -> str:
    """One rule with everything that stands in its file."""
    lines = [rule.title, f"({rule.id}, about: {rule.about})"]
    lines += heading("When", width)
    for line in _conditions(rule):
        lines += bullet(line, width)
    for title, text in (("Says", rule.says), ("Means", rule.means), ("How sure", rule.certainty)):
        lines += heading(title, width) + paragraph(text, width)
    official = (
        f" Official items of Directive 2014/45/EU, Annex I: {', '.join(rule.official)}." if rule.official else ""
    )
    lines += heading("Class", width) + paragraph(f"{rule.class_}. {rule.class_reason}{official}", width)
    if rule.harm is not None:
        lines += heading(f"Story to harm (severity {rule.harm.severity} of 4)", width)
        for number, step in enumerate(rule.harm.story, 1):
            lines += bullet(f"{step.step} ({step.chance})", width, f"{number}.")
    lines += heading("What to do", width)
    for action in rule.do:
        lines += bullet(f"{action.by}: {action.step}", width)
    lines += heading("Confirm", width) + paragraph(rule.confirm, width)
    if rule.settled_by:
        lines += heading("Would settle it", width) + paragraph(rule.settled_by, width)
    lines += heading("Mistaken for", width) + [one for text in rule.mistaken_for for one in bullet(text, width)]
    for caution in rule.cautions:
        entry = knowledge.cautions[caution]
        lines += heading(f"Caution: {entry.title}", width) + paragraph(entry.text, width)
    lines += heading("Sources", width)
    for citation in rule.sources:
        lines += bullet(_cited(citation, knowledge), width)
    for title, examples in (
        ("Fires on", rule.examples.fires_on),
        ("Stays quiet on", rule.examples.stays_quiet_on),
        ("Leaves open", rule.examples.leaves_open),
    ):
        if examples:
            lines += heading(title, width)
            for example in examples:
                lines += bullet(_example(example), width)
    return "\n".join(lines)


def _cited(citation: Citation, knowledge: Knowledge) -> str:
    source = knowledge.sources[citation.source]
    return f"{source.title}, {citation.at}: {citation.gives} ({source.standing}; {citation.known})"


def _example(example: Example) -> str:
    seen = "; ".join(
        f"{address}: " + ", ".join(f"{name.replace('_', ' ')} {value}" for name, value in looks.items())
        for address, looks in example.seen.items()
    )
    return f"{example.case} [{seen}]"


def _conditions(rule: Rule) -> Iterator[str]:
    for tests in rule.cases():
        yield _tests(tests)
    titles = {"gathers": "must stand", "backed_by": "makes it surer", "refuted_by": "rules it out"}
    for where, _, member in rule.members():
        yield f"{titles[where]}: {_member(member)}"


def _tests(tests: Tests) -> str:
    return ", and ".join(f"{name.replace('_', ' ')} {_test(test)}" for name, test in tests.items())


def _test(test: Test) -> str:
    words = " or ".join(test.values)
    return f"is {words}" if test.word in ("is", "one_of") else f"{test.word} the {words}"


def _member(member: Member) -> str:
    found = []
    for one in member.alternatives():
        found.append(f"{one.look.part}: {_tests(one.look.tests)}" if one.look else f"finding {one.rule}")
    return ", or ".join(found)


def part_list(knowledge: Knowledge, width: int) -> str:
    """Every part with its places and how many looks it has."""
    lines: list[str] = []
    for part, entries in knowledge.properties.items():
        asked = [entry for entry in entries.values() if entry.asked]
        places = dict.fromkeys(p for m in knowledge.machines.values() for p in m.parts.get(part, ()))
        looks = "1 look" if len(asked) == 1 else f"{len(asked)} looks"
        lines += bullet(f"{part} @ {', '.join(places)} ({looks})", width)
    return "\n".join([*lines, "", 'One in full: inspector observable "brake pad"'])


def part_text(part: str, knowledge: Knowledge, width: int) -> str:
    """One part: each property with how to look, units or choices, tools and minutes."""
    places = dict.fromkeys(p for m in knowledge.machines.values() for p in m.parts.get(part, ()))
    lines = [part, *paragraph(f"Places: {', '.join(places)}", width)]
    for name, entry in knowledge.properties[part].items():
        lines += heading(name.replace("_", " ") + (" (critical)" if entry.critical else ""), width)
        lines += [line for text in _property(entry, knowledge) for line in paragraph(text, width)]
        for word, meaning in entry.choices.items():
            lines += bullet(f"{word}: {meaning}", width)
        for limit_name, limit in knowledge.limits.get((part, name), {}).items():
            bounds = ", ".join(t for t in (limit.at_least and f"at least {limit.at_least}",
                                           limit.at_most and f"at most {limit.at_most}") if t)  # fmt: skip
            own = "; the stamp or the manual replaces it" if limit.given_by_machine else ""
            lines += bullet(f"limit `{limit_name}`: {bounds or 'see its origin'} ({limit.origin}{own})", width)
    return "\n".join(lines)


def _property(entry: Property, knowledge: Knowledge) -> Iterator[str]:
    if entry.derive is not None:
        yield f"Worked out, never asked: {entry.means}"
        return
    yield f"{entry.ask} {entry.look}"
    when = {
        "viewing": "at a viewing, nothing undone",
        "garage": "in a garage, with a stand or tools",
        "riding": "while riding or rolling",
        "papers": "in the papers",
        "service": "after your own service",
    }[entry.moment]
    yield f"When: {when}; about {entry.minutes:g} min. With: {', '.join(entry.tools) or 'eyes'}."
    if entry.kind not in ("choice", "text"):
        yield answer_form(entry)


def answer_form(entry: Property) -> str:
    """What may be written as the answer to a question."""
    if entry.kind == "quantity":
        assert entry.dimension is not None
        return f"Write a number and a unit ({', '.join(units_of(entry.dimension))}), from {entry.plausible}."
    if entry.kind == "count":
        return f"Write a whole number, {entry.plausible}."
    if entry.kind == "yes_no":
        return f"Write yes or no (good: {', '.join(entry.good) or 'either'})."
    return {
        "choice": f"Write one of: {', '.join(entry.words())}.",
        "date": "Write a date such as 2024-05-17 or 2024-05, or `unknown`.",
        "odometer": "Write the reading of that day, such as 38 200 km, or `unknown`.",
        "tyre_code": "Write the last four figures of the code, such as 2319; old tyres have three.",
        "text": "Write it in your own words.",
    }[entry.kind]
