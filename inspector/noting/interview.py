"""The interview in a terminal: print a step, read a line, keep it, until all is answered or the person stops."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from inspector.knowledge.faults import Faults
from inspector.knowledge.wording import words
from inspector.noting.answers import Typed, understand
from inspector.noting.prompts import caution_lines, left_text, more_lines, step_lines, stop_lines
from inspector.noting.record_file import NotKept
from inspector.noting.session import NoAnswer, Session, Step
from inspector.reading.photos import NoPhoto
from inspector.reporting.lines import bullet, paragraph

Say = Callable[[Iterable[str]], None]
Read = Callable[[str], str]


class Interview:
    """Talks; `say` prints lines, `read` asks for one and raises EOFError or KeyboardInterrupt when it ends."""

    def __init__(self, session: Session, say: Say, read: Read, width: int) -> None:
        self.session = session
        self.say = say
        self.read = read
        self.width = width
        self._stop: int | None = None
        self._warned: set[str] = set()

    def run(self) -> None:
        """Ask until there is nothing left to ask or the person quits. Raises Faults if the record breaks."""
        self.say(paragraph(words()["ask"]["intro"], self.width))
        while (step := self.session.step()) is not None:
            self._show(step)
            if not self._answered(step):
                return

    def _show(self, step: Step) -> None:
        known = self.session.record.known
        if step.question is not None:
            if step.question.stop != self._stop:
                self._stop = step.question.stop
                self.say(stop_lines(step.question, known, self.width))
            self.say(["", *paragraph(f"[{left_text(self.session.open())}]", self.width)])
        now = _shown(self.session.record.entry(step.question.key)) if step.prop and step.question else None
        self.say(step_lines(step, known, self.width, now)[0 if step.kind == "head" else 1 :])
        for name in step.prop.cautions if step.prop else ():
            if name not in self._warned:
                self._warned.add(name)
                self.say(caution_lines(name, known, self.width))

    def _answered(self, step: Step) -> bool:
        """Read lines until one is kept or taken back; False when the person stops."""
        while True:
            try:
                line = self.read(words()["ask"]["prompt"])
            except (EOFError, KeyboardInterrupt):
                self.say([""])
                return False
            typed = understand(line, step.prop)
            if typed.verb == "quit":
                return False
            if typed.verb == "more":
                self.say(more_lines(step, self.session.record.known, self.width))
            elif typed.verb in ("note", "photo"):
                self._added(step, typed)
            elif self._kept(step, typed):
                return True

    def _added(self, step: Step, typed: Typed) -> None:
        ask = words()["ask"]
        try:
            text = ask["added"].format(what=typed.verb, look=self.session.add(step, typed))
        except NoAnswer as error:
            text = ask[str(error)]
        except (NoPhoto, NotKept) as error:
            text = str(error)
        except Faults as faults:
            text = " ".join(dict.fromkeys(fault.text for fault in faults.faults))
        self.say(paragraph(text, self.width, "  "))

    def _kept(self, step: Step, typed: Typed) -> bool:
        ask = words()["ask"]
        try:
            if typed.verb == "back":
                done = self.session.back()
                self.say(paragraph(ask["back" if done else "back_none"], self.width, "  "))
                return done
            self.session.answer(step, typed)
            return True
        except NoAnswer as error:
            self.say(paragraph(ask[str(error)], self.width, "  "))
        except Faults as faults:
            for text in dict.fromkeys(fault.text for fault in faults.faults):
                self.say(paragraph(text, self.width, "  "))
        except NotKept as error:
            self.say(paragraph(str(error), self.width, "  "))
        return False


def _shown(entry: Any) -> str | None:
    """What stands in the record for a look, in one line."""
    if isinstance(entry, dict):
        return ", ".join(f"{name}: {_shown(one)}" for name, one in entry.items())
    if isinstance(entry, list):
        return " / ".join(str(_shown(one)) for one in entry)
    return None if entry is None else str(entry)


def closing(session: Session, go_on: str, judge: str, width: int) -> list[str]:
    """What is kept, what is open, what was skipped and what the depth left out."""
    ask = words()["ask"]
    remaining, skipped = session.open(), session.skipped()
    lines = ["", *paragraph(ask["kept"].format(file=session.record.path), width)]
    if remaining:
        lines += paragraph(ask["open_left"].format(left=left_text(remaining), command=go_on), width)
    else:
        lines += paragraph(ask["done"], width)
    if skipped:
        lines += paragraph(ask["skipped"].format(number=len(skipped)), width)
        for one in skipped:
            lines += bullet(f"{one.address}: {one.name.replace('_', ' ')}", width)
    asked, everything = len(session.questions()), len(session.everything())
    if asked < everything:
        text = ask["outside"].format(depth=session.depth, number=everything - asked, all=everything)
        lines += paragraph(text, width)
    return [*lines, *paragraph(ask["judge"].format(command=judge), width)]
