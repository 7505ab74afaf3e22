"""The interview at a real terminal: answers, commands, undo, and going on after the program was killed."""

from __future__ import annotations

import random
import signal
import sys
from datetime import date
from pathlib import Path

import pexpect
import pytest

from inspector import assess, read
from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import PURPOSES, questions
from inspector.noting.answers import recorded, understand
from inspector.noting.record_file import RecordFile
from inspector.reading.inspection import Silent, Word
from inspector.reading.values import NotAValue, read_value
from tests.records import good_value

ROOT = Path(__file__).resolve().parents[2]
KNOWN = knowledge()
NEW = ["--machine", "shaft drive motorcycle", "--for", "before purchase", "--depth", "core"]


class Person:
    """Sits at the terminal: reads up to the prompt, types a line."""

    def __init__(self, record: Path, *options: str) -> None:
        arguments = ["-m", "inspector", "ask", str(record), *options]
        self.terminal = pexpect.spawn(sys.executable, arguments, cwd=ROOT, encoding="utf-8", timeout=30,
                                      dimensions=(40, 100))  # fmt: skip
        self.terminal.setecho(False)
        self.terminal.delaybeforesend = None

    def reads(self) -> str:
        """What is on the screen up to the next prompt."""
        self.terminal.expect("\n> ")
        return " ".join(self.terminal.before.split())

    def types(self, line: str) -> None:
        self.terminal.sendline(line)

    def says(self, line: str) -> str:
        """Type a line, read what comes."""
        self.types(line)
        return self.reads()

    def leaves(self) -> str:
        """The rest, after the program has ended by itself."""
        self.terminal.expect(pexpect.EOF)
        self.terminal.close()
        assert self.terminal.exitstatus == 0
        return " ".join(self.terminal.before.split())

    def killed(self) -> None:
        self.terminal.kill(signal.SIGKILL)
        self.terminal.close(force=True)


def test_a_person_goes_through_the_first_questions(tmp_path: Path) -> None:
    record = tmp_path / "bike.yaml"
    person = Person(record, *NEW)
    assert "distance counter" in person.reads()
    assert "`41 200` has no unit" in person.says("41 200")
    assert "In which year" in person.says("41 200 km")
    assert "country" in person.says("skip")
    first = person.says("GB")

    # the stop, what is left, the question, how to look, tool and minutes
    assert "Stop 1 of 9: papers, key off" in first
    assert "[31 questions left, about" in first
    assert "Was the engine cold when you came?" in first
    assert "Hold the back of your hand near the engine case." in first
    assert "With back of the hand. Less than a minute." in first
    assert "1 cold, 2 warm, 3 hot" in first
    assert "Caution, Hot parts burn long after the ride" in first

    with pytest.raises(NotAValue) as refused:
        read_value("wram", KNOWN.properties["engine"]["temperature_on_arrival"], KNOWN, date.today())
    assert " ".join(str(refused.value).split()) in person.says("wram")
    assert "skip part [reason]" in person.says("?")
    assert "[30 questions left" in person.says("2")
    assert read(record).observations["engine", "engine", "temperature_on_arrival"].value == Word("warm")
    assert "Is there a photo" in person.says("skip it was dark")
    undone = person.says("back")
    assert "Taken back." in undone
    assert "is the frame number" in undone.lower()
    assert ("papers", "whole machine", "frame_number") not in read(record).observations
    assert "Is there a photo" in person.says("same")
    person.says("none")  # here no choice is called so: the question does not apply
    person.says("hidden: too dirty")
    person.types("quit")
    end = person.leaves()

    assert "Open: 27 questions left" in end
    assert "Not checked or not seen (1): - tyre @ front: date code" in end
    looks = read(record).observations
    assert looks["odometer record", "whole machine", "reading_photo"].value == Silent("does not apply")
    assert looks["tyre", "front", "date_code"].value == Silent("could not see", "too dirty")
    assert assess(read(record)).verdict.level == "unseen"


def test_none_is_the_answer_where_a_choice_is_called_so(tmp_path: Path) -> None:
    look = KNOWN.properties["tyre"]["cracks"]

    assert recorded(understand("none", look)) == "none"
    assert understand("none", look).verb == "value"
    assert recorded(understand("none", KNOWN.properties["tyre"]["tread_centre"])) == "does not apply"
    assert recorded(understand("does not apply", look)) == "does not apply"


def test_no_word_of_a_question_is_taken_for_a_command() -> None:
    for part, entries in KNOWN.properties.items():
        for name, prop in entries.items():
            for word in prop.words() if prop.asked else ():
                assert recorded(understand(word, prop)) == word, (part, name)


def test_going_on_begins_at_the_first_open_question_and_back_reaches_what_was_answered_before(
    tmp_path: Path,
) -> None:
    record = tmp_path / "bike.yaml"
    record.write_text(
        "# mine\nmachine: {kind: shaft drive motorcycle, odometer: 9000 km}\n"
        "inspection: {purpose: before purchase, date: 2026-05-01}\n"
        "observations:\n  engine: {temperature_on_arrival: cold}\n  papers: {frame_number: same}  # read aloud\n"
    )
    person = Person(record, "--depth", "core")
    assert "Is there a photo" in person.reads()
    asked = person.says("back")
    assert "Is the frame number" in asked
    assert "Noted so far: same. An empty line keeps it." in asked
    assert "Is there a photo" in person.says("")
    person.says("back")
    assert "Is there a photo" in person.says("clerical slip")
    person.types("quit")
    person.leaves()
    text = record.read_text()

    assert "papers: {frame_number: clerical slip} # read aloud" in " ".join(text.split())
    assert text.startswith("# mine\n")


def test_a_part_that_the_machine_lacks_is_asked_for_once_and_noted(tmp_path: Path) -> None:
    record = tmp_path / "bike.yaml"
    walk = questions(KNOWN, "chain_drive", "before purchase", "short")
    looks = [one for one in walk if one.part != "abs"]
    file = RecordFile(record, KNOWN, date.today())
    file.create("chain_drive", "before purchase")
    file.answer({one.key: "not checked" for one in looks})
    person = Person(record, "--depth", "short")
    assert "Does this machine have this: abs?" in person.reads()
    person.types("no")
    assert "All questions of this depth are answered." in person.leaves()

    assert read(record).without == (("abs", "whole machine"),)


def test_after_own_service_only_what_belongs_to_the_work_is_asked(tmp_path: Path) -> None:
    record = tmp_path / "bike.yaml"
    person = Person(record, "--machine", "shaft_drive", "--for", "after own service", "--depth", "core")
    for answer in ("41 200 km", "skip", "skip"):
        person.reads()
        person.types(answer)
    assert "What did you work on?" in person.reads()
    assert "Did you mean `brake pads`?" in person.says("brake pad @ front")
    person.says("brake pads @ front, tyre @ rear")
    person.types("quit")
    person.leaves()

    assert read(record).work == (("brake_pads", "front"), ("tyre", "rear"))
    now = read(record)
    asked = {one.key for one in questions(KNOWN, now.kind, now.purpose, "core", now.work)}
    assert ("brake caliper", "front left", "bolts_counted_tight") in asked
    assert ("brake caliper", "rear", "bolts_counted_tight") not in asked


def test_a_wrong_kind_is_refused_before_anything_is_written(tmp_path: Path) -> None:
    record = tmp_path / "bike.yaml"
    terminal = pexpect.run(
        f"{sys.executable} -m inspector ask {record} --machine 'chain drive motorcycel' --for handover",
        cwd=str(ROOT), encoding="utf-8", withexitstatus=True, timeout=30,
    )  # fmt: skip

    assert terminal[1] == 2
    assert "Did you mean `chain drive motorcycle`?" in terminal[0]
    assert not record.exists()


def test_killed_again_and_again_no_answer_is_lost_and_the_file_is_always_whole(tmp_path: Path) -> None:
    record = tmp_path / "bike.yaml"
    dice = random.Random(4)
    by_ask = {
        " ".join((one.prop.ask or "").split()): one for one in questions(KNOWN, "shaft_drive", PURPOSES[0], "core")
    }
    sure: set[tuple[str, str, str]] = set()
    file = RecordFile(record, KNOWN, date.today())
    file.create("shaft_drive", "before purchase")
    file.head("machine", "odometer", "41 200 km")
    file.answer({("machine", "whole machine", "handling"): "not checked: not ridden"})
    kills = 0
    for _ in range(60):
        person = Person(record, "--depth", "core")
        done = False
        for _ in range(dice.randint(2, 8)):
            try:
                screen = person.reads()
            except pexpect.EOF:
                done = True
                break
            before = set(read(record).observations)
            assert before >= sure
            sure = before
            prop = next(one.prop for ask, one in by_ask.items() if ask in screen)
            person.types(good_value(prop))
        if done:
            break
        person.terminal.expect(pexpect.TIMEOUT, timeout=dice.choice([0, 0.002, 0.01, 0.03, 0.1]))
        person.killed()
        kills += 1
        assert set(read(record).observations) >= sure  # read refuses a file that is not whole

    walk = questions(KNOWN, "shaft_drive", "before purchase", "core")
    assert kills >= 4
    assert set(read(record).observations) == {one.key for one in walk} | {("machine", "whole machine", "handling")}
