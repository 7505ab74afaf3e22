"""The rule format: conditions in ten words, what a rule says, its story to harm, its own examples."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, model_validator

from inspector.knowledge.model import Citation, Entry, Identifier, RuleId, Text, YesNo

TestWord = Literal["is", "one_of", "beyond", "within", "reaches"]
Class = Literal["none", "minor", "major", "dangerous"]
Certainty = Literal["as good as the reading", "certain", "strong", "medium", "weak"]
Effort = Literal["none", "trifle", "small", "medium", "large", "very large"]
Who = Literal["owner", "licensed mechanic"]
Chance = Literal[
    "certain", "very frequent", "frequent", "common", "occasional", "unlikely", "unusual", "rare",
    "extremely rare",
]  # fmt: skip
LIMIT_TESTS: tuple[TestWord, ...] = ("beyond", "within", "reaches")
PLACEHOLDER = re.compile(r"\{([^{}]*)\}")


class Test(Entry):
    """One test on one property: a word and what it compares with."""

    word: TestWord
    values: tuple[Text, ...]


def _test(value: Any) -> Any:
    if not isinstance(value, dict) or len(value) != 1:
        raise ValueError("a test has exactly one of the words is, one_of, beyond, within, reaches")
    ((word, against),) = value.items()
    many = isinstance(against, list)
    if many != (word == "one_of"):
        raise ValueError(f"`{word}` takes {'one value' if many else 'a list of values'}")
    return {"word": word, "values": against if many else [against]}


Tests = dict[Identifier, Annotated[Test, BeforeValidator(_test)]]


class Look(Entry):
    """A condition on the looks at one part, judged wherever that part lies in the zone."""

    part: Text
    tests: Tests


class Member(Entry):
    """One thing a cause gathers: another rule's finding, a look at a part, or any of several."""

    rule: RuleId | None = None
    look: Look | None = None
    any_of: tuple[Member, ...] = ()

    def alternatives(self) -> tuple[Member, ...]:
        """The plain members this one stands for."""
        return self.any_of or (self,)


def _member(value: Any) -> Any:
    if isinstance(value, str):
        return {"rule": value}
    if not isinstance(value, dict) or len(value) != 1:
        raise ValueError("a member is a rule id, `{part: {property: test}}` or `any: [..]`")
    ((head, body),) = value.items()
    if head == "any":
        if not isinstance(body, list) or len(body) < 2:
            raise ValueError("`any` needs at least two members")
        return {"any_of": [_member(one) for one in body]}
    return {"look": {"part": head, "tests": body}}


Members = tuple[Annotated[Member, BeforeValidator(_member)], ...]


class Step(Entry):
    """One step of the story from the defect to the harm, given the steps before it."""

    step: Text
    chance: Chance


class Harm(Entry):
    """How bad it may end, for a person or for property, and by which shortest story."""

    severity: Literal["1", "2", "3", "4"]
    to: Literal["person", "property"] = "person"
    story: tuple[Step, ...]

    @model_validator(mode="after")
    def _short(self) -> Self:
        if not 1 <= len(self.story) <= 5:
            raise ValueError("a story has one to five steps (Reg. (EU) 2024/3173, Annex II 3.2.4)")
        return self


class Action(Entry):
    """One thing to do and who should do it."""

    step: Text
    by: Who


class Example(Entry):
    """A case the rule must answer in the named way; `seen` and `machine` are what a record would say."""

    case: Text
    seen: dict[Text, dict[Text, Any]] = {}
    given: dict[Text, dict[Text, Text]] = {}
    work: tuple[Text, ...] = ()
    machine: dict[Text, Text] = {}
    country: Text = "GB"
    date: Text = "2026-06-01"
    odometer: Text = "40000 km"


class Examples(Entry):
    """The cases of one rule by the answer they must get."""

    fires_on: tuple[Example, ...]
    stays_quiet_on: tuple[Example, ...]
    leaves_open: tuple[Example, ...] = ()


class Rule(Entry):
    """A rule as written in its file; `id` is the path of the file."""

    id: RuleId
    title: Text
    about: Text
    when: Tests = {}
    when_any: tuple[Tests, ...] = ()
    gathers: Members = ()
    backed_by: Members = ()
    refuted_by: Members = ()
    settled_by: Text | None = None
    step_up: YesNo = False
    gives_way_to: tuple[RuleId, ...] = ()
    says: Text
    means: Text
    class_: Class
    official: tuple[Text, ...] = ()
    class_reason: Text
    due: YesNo = False
    harm: Harm | None = None
    certainty: Certainty
    effort: Effort
    do: tuple[Action, ...]
    confirm: Text
    mistaken_for: tuple[Text, ...]
    cautions: tuple[Identifier, ...]
    sources: tuple[Citation, ...]
    covers: tuple[Text, ...] = ()
    examples: Examples

    @model_validator(mode="before")
    @classmethod
    def _class_key(cls, data: Any) -> Any:
        if isinstance(data, dict) and "class" in data:
            data = {("class_" if key == "class" else key): value for key, value in data.items()}
        return data

    @model_validator(mode="after")
    def _complete(self) -> Self:
        kinds = [bool(self.when), bool(self.when_any), bool(self.gathers)]
        if sum(kinds) != 1:
            raise ValueError("a rule has exactly one of `when`, `when_any`, `gathers`")
        if not self.is_cause and (self.backed_by or self.refuted_by or self.settled_by or self.step_up):
            raise ValueError("`backed_by`, `refuted_by`, `settled_by`, `step_up` go only with `gathers`")
        if self.is_suspicion and (self.settled_by is None or self.certainty not in ("weak", "medium", "strong")):
            raise ValueError("a cause needs `settled_by`, and its certainty is weak, medium or strong")
        if (self.harm is None) != (self.class_ == "none"):
            raise ValueError("`harm` is told for every class but none")
        if self.due and self.class_ not in ("none", "minor"):
            raise ValueError("`due` goes only with class none or minor")
        if not (self.do and self.mistaken_for and self.sources):
            raise ValueError("`do`, `mistaken_for` and `sources` need at least one entry each")
        if any(word.strip().lower() == "unknown" for word in self.mistaken_for):
            raise ValueError("`mistaken_for: unknown` helps nobody; name a look-alike")
        if not (self.examples.fires_on and self.examples.stays_quiet_on):
            raise ValueError("`examples` need `fires_on` and `stays_quiet_on`")
        return self

    @property
    def system(self) -> str:
        """The system the rule belongs to: the folder of its file."""
        return self.id.split("/")[0]

    @property
    def is_cause(self) -> bool:
        """Whether the rule gathers findings instead of looking at one part."""
        return bool(self.gathers)

    @property
    def is_suspicion(self) -> bool:
        """Whether it names a suspected cause (a step-up of several findings is no suspicion)."""
        return self.is_cause and not self.step_up

    def cases(self) -> tuple[Tests, ...]:
        """The alternative sets of tests of a rule about one part."""
        return (self.when,) if self.when else self.when_any

    def members(self) -> Iterator[tuple[str, int, Member]]:
        """All members of a cause with the heading and position they stand under."""
        for heading in ("gathers", "backed_by", "refuted_by"):
            for position, member in enumerate(getattr(self, heading)):
                yield heading, position, member

    def placeholders(self) -> list[str]:
        """Names in braces in `says`."""
        return PLACEHOLDER.findall(self.says)
