"""One interview: which question is open, what an answer changes in the record, and how it is taken back.

Knows no terminal. Every accepted answer is on disk before the next question is given out.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from inspector.knowledge.observables import Property
from inspector.knowledge.walk_round import Depth, Question, questions
from inspector.noting.answers import Typed, recorded
from inspector.noting.photo_beside import photo_beside
from inspector.noting.record_file import RecordFile
from inspector.reading.inspection import Silent
from inspector.reading.values import SILENCE_HEADINGS, read_silence

# what is asked before the walk begins: section, name, and whether `work done` is meant by it
HEADS = (("machine", "odometer"), ("machine", "year"), ("inspection", "country"), ("work done", None))
Kind = Literal["head", "part", "look"]


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to ask: a line of the head, whether the machine has a part, or a look."""

    kind: Kind
    section: str = ""
    name: str | None = None
    question: Question | None = None

    @property
    def prop(self) -> Property | None:
        """The property that is asked for, if it is a look."""
        return self.question.prop if self.question is not None and self.kind == "look" else None


class NoAnswer(ValueError):
    """A line that answers nothing here; its message is a key of the words of the interview."""


class Session:
    """The state of an interview about one record."""

    def __init__(self, record: RecordFile, depth: Depth) -> None:
        self.record = record
        self.depth = depth
        self._passed: set[object] = set()
        self._history: list[tuple[Step, Callable[[], None]]] = []
        self._again: Step | None = None
        self._last: Step | None = None
        self._walk: tuple[object, tuple[Question, ...]] | None = None

    def questions(self) -> tuple[Question, ...]:
        """Every question of the depth in walk-round order."""
        now = self.record.inspection
        state = (now.kind, now.purpose, now.work, now.without)
        if self._walk is None or self._walk[0] != state:
            self._walk = (
                state,
                questions(self.record.known, now.kind, now.purpose, self.depth, now.work, now.without),
            )
        return self._walk[1]

    def everything(self) -> tuple[Question, ...]:
        """Every question of the depth `full`."""
        now = self.record.inspection
        return questions(self.record.known, now.kind, now.purpose, "full", now.work, now.without)

    def open(self) -> tuple[Question, ...]:
        """The questions without an answer."""
        answered = self.record.inspection.observations
        return tuple(one for one in self.questions() if one.key not in answered)

    def skipped(self) -> tuple[Question, ...]:
        """The questions that were answered with `not checked` or `could not see`."""
        answered = self.record.inspection.observations
        states = {key: one.value.state for key, one in answered.items() if isinstance(one.value, Silent)}
        return tuple(one for one in self.questions() if states.get(one.key) in ("not looked at", "could not see"))

    def step(self) -> Step | None:
        """What to ask now: the first open question. None when all are answered."""
        self.record.read()
        if self._again is not None:
            return self._again
        head = self._head()
        if head is not None:
            return head
        now = self.record.inspection
        observed = {part for part, _, _ in now.observations}
        optional = self.record.known.machines[now.kind].optional_parts
        for one in self.open():
            if one.part in optional and one.part not in observed and one.part not in self._passed:
                return Step("part", question=one)
            return Step("look", question=one)
        return None

    def _head(self) -> Step | None:
        now = self.record.inspection
        if now.observations:
            return None
        given = {"odometer": now.odometer, "year": now.year, "country": now.country, None: now.work}
        for section, name in HEADS:
            wanted = name is not None or now.purpose == "after own service"
            if wanted and not given[name] and (section, name) not in self._passed:
                return Step("head", section, name)
        return None

    def answer(self, step: Step, typed: Typed) -> None:
        """Keep an answer. Raises NoAnswer, and Faults with the words of the record reader."""
        if step.kind == "head":
            self._answer_head(step, typed)
        elif step.kind == "part":
            self._answer_part(step, typed)
        else:
            self._answer_look(step, typed)
        self._again = None

    def _answer_look(self, step: Step, typed: Typed) -> None:
        assert step.question is not None
        if typed.verb == "nothing":
            if self._again is None:
                raise NoAnswer("empty")
            return
        keys = [step.question.key]
        if typed.verb == "skip part":
            where = step.question.key[:2]
            keys = [one.key for one in self.open() if one.key[:2] == where] or keys
        before = {key: self.record.entry(key) for key in keys}
        self.record.answer(dict.fromkeys(keys, recorded(typed)))
        self._history.append((step, lambda: self.record.answer(before)))
        self._last = step

    def add(self, step: Step, typed: Typed) -> str:
        """Add a note or a photo to the answer of `step`, or to the one before; the heading of that look.

        Raises NoAnswer when there is none, NoPhoto, Faults, and OSError when a photo cannot be copied.
        """
        asked = step if step.prop is not None and self._entry(step) is not None else self._last
        before = self._entry(asked) if asked is not None else None
        if asked is None or asked.question is None or before is None:
            raise NoAnswer("nothing_to_add_to")
        key = asked.question.key
        entry = dict(before) if isinstance(before, dict) else _opened(str(before))
        if typed.verb == "photo":
            entry["photo"] = photo_beside(self.record.path, typed.text)
        else:
            heading = next((one for one in SILENCE_HEADINGS if one in entry), "note")
            old = entry.get(heading)
            entry[heading] = typed.text if old in (None, "", "yes") else f"{old}; {typed.text}"
        self.record.answer({key: entry})
        self._history.append((asked, lambda: self.record.answer({key: before})))
        return f"{asked.question.address}: {asked.question.name.replace('_', ' ')}"

    def _entry(self, step: Step) -> Any:
        return self.record.entry(step.question.key) if step.question is not None else None

    def _answer_part(self, step: Step, typed: Typed) -> None:
        assert step.question is not None
        part = step.question.part
        word = typed.text.lower() if typed.verb == "value" else typed.verb
        if word in ("yes", "1"):
            self._passed.add(part)
            self._history.append((step, lambda: self._passed.discard(part)))
        elif word in ("no", "none", "2"):
            old = self.record.without()
            self.record.head("machine", "without", [*old, part])
            self._history.append((step, lambda: self.record.head("machine", "without", old or None)))
        elif word in ("skip", "skip part"):
            keys = [one.key for one in self.open() if one.part == part]
            self.record.answer(dict.fromkeys(keys, recorded(typed)))
            self._history.append((step, lambda: self.record.answer(dict.fromkeys(keys))))
        else:
            raise NoAnswer("yes_or_no")

    def _answer_head(self, step: Step, typed: Typed) -> None:
        mark = (step.section, step.name)
        if typed.verb in ("skip", "none"):
            self._passed.add(mark)
            self._history.append((step, lambda: self._passed.discard(mark)))
            return
        if typed.verb != "value":
            raise NoAnswer("head_wanted")
        value = [one.strip() for one in typed.text.split(",")] if step.name is None else typed.text
        self.record.head(step.section, step.name, value)
        self._history.append((step, lambda: self.record.head(step.section, step.name, None)))
        self._passed.add(mark)

    def back(self) -> bool:
        """Take the last answer back and ask it again; without one, ask the answered question before this one."""
        if self._history:
            step, undo = self._history.pop()
            undo()
            self._passed.discard((step.section, step.name))
            restored = step.question is not None and step.question.key in self.record.inspection.observations
            self._again = step if restored and step.kind == "look" else None
            return True
        walk, here = self.questions(), self.step()
        if here is None or here.question is None:
            position = len(walk) if here is None else 0
        else:
            position = walk.index(here.question)
        answered = self.record.inspection.observations
        for one in reversed(walk[:position]):
            if one.key in answered:
                self._again = Step("look", question=one)
                return True
        return False


def _opened(text: str) -> dict[str, Any]:
    """An answer in one line as a table, so that a note or a photo can stand beside it."""
    silent = read_silence(text)
    if silent is None:
        return {"value": text}
    heading = "not checked" if silent.state == "not looked at" else silent.state
    return {heading: silent.reason or "yes"}
