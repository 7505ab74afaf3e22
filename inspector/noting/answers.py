"""What a person types in the interview: a value, or one of the few commands."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Literal

from inspector.knowledge.observables import Property
from inspector.reading.addresses import plain

Verb = Literal["value", "more", "skip", "skip part", "none", "hidden", "back", "quit", "note", "photo", "nothing"]
_COMMAND = re.compile(
    r"(?P<verb>skip part|skip|hidden|none|back|quit|\?)(?:\s*[:,]\s*|\s+|$)(?P<rest>.*)", re.IGNORECASE
)
_ADDED = re.compile(r"(?P<verb>note|photo)\s*:\s*(?P<rest>.+)", re.IGNORECASE)
_STATES = {"skip": "not checked", "skip part": "not checked", "hidden": "could not see", "none": "does not apply"}
_ALONE = ("none", "back", "quit", "?")


@dataclass(frozen=True, slots=True)
class Typed:
    """One line, understood: a command with its reason, or a value."""

    verb: Verb
    text: str = ""


def clean(line: str) -> str:
    """The line without what a terminal obeys (escapes, changes of direction)."""
    shown = "".join(one if unicodedata.category(one)[0] != "C" else " " for one in line)
    return " ".join(shown.split())


def numbered(prop: Property) -> bool:
    """Whether the choices may be picked by number: not where a choice is a number itself."""
    return prop.kind in ("choice", "yes_no") and not any(word.isdigit() for word in prop.words())


def understand(line: str, prop: Property | None = None) -> Typed:
    """What a line means. A word that the question itself allows is always the answer, never a command."""
    text = clean(line)
    if not text:
        return Typed("nothing")
    words = {plain(word): word for word in prop.words()} if prop is not None else {}
    if plain(text) in words:
        return Typed("value", text)
    if prop is not None and text.isdigit() and numbered(prop) and 1 <= int(text) <= len(words):
        return Typed("value", prop.words()[int(text) - 1])
    added = _ADDED.fullmatch(text)
    if added is not None:
        return Typed("note" if added["verb"].lower() == "note" else "photo", added["rest"])
    match = _COMMAND.fullmatch(text)
    if match is None:
        return Typed("value", text)
    verb, rest = " ".join(match["verb"].lower().split()), match["rest"].strip()
    if verb in _ALONE and rest:
        return Typed("value", text)
    return Typed("more") if verb == "?" else Typed(verb, rest)  # type: ignore[arg-type]


def recorded(typed: Typed) -> str:
    """The line as a record holds it."""
    if typed.verb not in _STATES:
        return typed.text
    return f"{_STATES[typed.verb]}: {typed.text}" if typed.text else _STATES[typed.verb]
