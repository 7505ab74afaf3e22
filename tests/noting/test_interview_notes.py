"""Notes and photos in the interview belong to the answer before; `back` takes them off again."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.noting.answers import Typed, understand
from inspector.noting.record_file import RecordFile
from inspector.noting.session import NoAnswer, Session, Step
from inspector.reading.inspection import Observation, Silent
from inspector.reading.photos import NoPhoto

KNOWN = knowledge()


class Person:
    """Answers an interview line by line, without a terminal."""

    def __init__(self, record: Path) -> None:
        self.file = RecordFile(record, KNOWN, date(2026, 6, 1))
        self.file.create("shaft_drive", "before purchase")
        self.session = Session(self.file, "core")

    def step(self) -> Step:
        step = self.session.step()
        assert step is not None
        return step

    def says(self, line: str) -> Observation | None:
        """Type a line; what the record says afterwards about the look that was asked for."""
        step = self.step()
        typed = understand(line, step.prop)
        if typed.verb == "back":
            assert self.session.back()
        elif typed.verb in ("note", "photo"):
            self.session.add(step, typed)
        else:
            self.session.answer(step, typed)
        return self.file.inspection.observations.get(step.question.key) if step.question is not None else None

    def first(self) -> Observation:
        return self.file.inspection.observations["engine", "engine", "temperature_on_arrival"]


@pytest.fixture
def person(tmp_path: Path) -> Person:
    (tmp_path / "record").mkdir()
    begun = Person(tmp_path / "record" / "bike.yaml")
    for _ in range(3):
        begun.says("skip")  # odometer, year, country
    return begun


def test_a_note_and_a_photo_go_to_the_answer_before_and_back_takes_them_off(
    person: Person, tmp_path: Path
) -> None:
    (tmp_path / "from camera.jpg").write_bytes(b"one")
    person.says("warm")
    person.says("note: he said: he moved it")
    person.says("note:an hour ago")
    person.says(f"photo: '{tmp_path / 'from camera.jpg'}'")
    assert person.first().note == "he said: he moved it; an hour ago"
    assert person.first().photo == "photos/from camera.jpg"
    assert (tmp_path / "record" / "photos" / "from camera.jpg").read_bytes() == b"one"
    person.says("back")
    assert person.first().photo is None
    assert person.step().question is not None
    assert person.step().question.name == "temperature_on_arrival"  # type: ignore[union-attr]
    person.says("")  # keeps it
    assert person.first().note == "he said: he moved it; an hour ago"


def test_what_could_not_be_seen_takes_the_note_as_its_reason(person: Person, tmp_path: Path) -> None:
    (tmp_path / "record" / "dark.jpg").write_bytes(b"x")
    person.says("hidden")
    person.says("note: too dark")
    person.says("photo: dark.jpg")
    assert person.first().value == Silent("could not see", "too dark")
    assert person.first().photo == "dark.jpg"  # it lies beside the record already
    person.says("back")
    person.says("back")
    assert person.first().value == Silent("could not see")


def test_another_picture_of_the_same_name_is_not_written_over(person: Person, tmp_path: Path) -> None:
    for folder in ("a", "b"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "pad.jpg").write_bytes(folder.encode())
    person.says("warm")
    for folder, name in (("a", "pad.jpg"), ("b", "pad_2.jpg"), ("a", "pad.jpg")):
        person.says(f"photo: {tmp_path / folder / 'pad.jpg'}")
        assert person.first().photo == f"photos/{name}"
        assert (tmp_path / "record" / "photos" / name).read_text() == folder


def test_nothing_to_add_to_and_no_such_photo_leave_the_record_as_it_was(person: Person) -> None:
    before = person.file.path.read_text()
    with pytest.raises(NoAnswer, match="nothing_to_add_to"):
        person.says("note: too early")
    assert person.file.path.read_text() == before
    person.says("warm")
    before = person.file.path.read_text()
    with pytest.raises(NoPhoto, match=r"there is no file `nowhere\.jpg`"):
        person.says("photo: nowhere.jpg")
    with pytest.raises(Faults, match="characters"):
        person.says("note: " + "long " * 2000)
    assert person.file.path.read_text() == before


def test_a_word_without_a_colon_is_an_answer() -> None:
    look = KNOWN.properties["odometer record"]["readings_list"]
    assert look.kind == "text"
    assert understand("note in the book, 2019", look) == Typed("value", "note in the book, 2019")
