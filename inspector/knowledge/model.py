"""What all knowledge files share: strict frozen models, citations, and errors in our own words."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Annotated, Any, Literal, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, StringConstraints, ValidationError

from inspector.knowledge.faults import Fault, not_allowed, shown
from inspector.knowledge.yamlfile import Document, Path


class Entry(BaseModel):
    """A piece of knowledge: unknown keys are refused, nothing changes after loading."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]
Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_]*$")]
RuleId = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_]*/[a-z][a-z0-9_]*$")]


def _yes_no(value: object) -> object:
    if isinstance(value, bool):
        return value
    if value in ("yes", "no"):
        return value == "yes"
    raise ValueError(f"`{value}` must be yes or no")


YesNo = Annotated[bool, BeforeValidator(_yes_no)]


def _as_list(value: object) -> object:
    return value if isinstance(value, list) else [value]


Words = Annotated[tuple[Text, ...], BeforeValidator(_as_list)]
Standing = Literal["law", "standard", "handbook", "paper", "common practice", "calculated here", "own choice"]
Known = Literal["read", "second hand", "from memory", "checked by test", "reason given"]


class Source(Entry):
    """Something outside this project that a figure or a statement rests on."""

    title: Text
    standing: Standing
    about: Text


class Citation(Entry):
    """Where a source says what, in our own words, and how we know that it does."""

    source: Identifier
    at: Text
    gives: Text
    known: Known


class Caution(Entry):
    """A warning: hazard, harm, how to avoid it; printed before the work it belongs to."""

    title: Text
    text: Text
    before: tuple[Text, ...] = ()
    always: YesNo = False
    sources: tuple[Citation, ...] = ()


class Tool(Entry):
    """A measuring tool and the standard uncertainty of a reading with it, by dimension."""

    called: Text
    means: Text
    gives: dict[Text, Text]
    sources: tuple[Citation, ...]


Model = TypeVar("Model", bound=BaseModel)


def read_model(kind: type[Model], data: Any, document: Document, path: Path, into: list[Fault]) -> Model | None:
    """Validate `data` found at `path`; on faults add them to `into` and return None."""
    try:
        return kind.model_validate(data)
    except ValidationError as error:
        seen: set[tuple[Path, object]] = set()
        for problem in error.errors(include_url=False):
            place = (*path, *_real_path(problem["loc"], data))
            what = problem["loc"][-1:] if problem["type"] == "missing" else ()
            if (place, what) in seen:  # a union reports once for each of its kinds
                continue
            seen.add((place, what))
            by_key = problem["type"] in ("extra_forbidden", "missing") or problem["loc"][-1:] == ("[key]",)
            into.append(document.fault(place, _words(problem, kind), key=by_key))
        return None


def _real_path(loc: tuple[str | int, ...], data: Any) -> Path:
    """Drop the parts of a location that name a member of a union, or `[key]`, rather than a place."""
    path: list[str | int] = []
    here = data
    for step in loc:
        if isinstance(step, str) and isinstance(here, dict) and step not in here:
            step = step.removesuffix("_")  # `class` is a word Python keeps for itself
        in_list = isinstance(here, list) and isinstance(step, int) and step < len(here)
        if in_list or (isinstance(here, dict) and step in here):
            here = here[step]
            path.append(step)
    return tuple(path)


def _words(problem: Any, kind: type[BaseModel]) -> str:
    """The sentence for one problem; no word of the library that found it."""
    name = _name(problem["loc"])
    found, context = problem.get("input"), problem.get("ctx", {})
    sentences: dict[str, Callable[[], str]] = {
        "missing": lambda: f"`{name}` is missing",
        "extra_forbidden": lambda: not_allowed("the heading", name, _headings(kind)),
        "string_too_short": lambda: f"`{name}` is empty",
        "string_pattern_mismatch": lambda: f"{shown(found)} must be in small letters, figures and `_` only",
        "literal_error": lambda: _one_of(name, found, str(context.get("expected"))),
        "too_short": lambda: f"`{name}` needs at least {context.get('min_length')} entry",
        "too_long": lambda: f"`{name}` may have at most {context.get('max_length')} entries",
        "value_error": lambda: str(context.get("error")),
    }
    sentence = sentences.get(problem["type"])
    return (
        sentence()
        if sentence
        else f"`{name}` must be {_wanted(problem['type'])}, found {shown(found)}".replace(
            "`this entry`", "this entry"
        )
    )


def _name(loc: tuple[str | int, ...]) -> str:
    """The heading a problem is about, as it is written in the file."""
    heading = next((step for step in reversed(loc) if isinstance(step, str) and step != "[key]"), None)
    return "this entry" if heading is None else heading.removesuffix("_")


def _wanted(problem: str) -> str:
    wanted = {
        "string": "a text",
        "dict": "headings with something below them",
        "model": "headings with something below them",
        "tuple": "a list",
        "list": "a list",
        "int": "a whole number",
        "float": "a number",
        "finite": "a number",
    }
    return wanted.get(problem.split("_")[0], "something else")


def _one_of(name: str, found: object, expected: str) -> str:
    words = re.findall(r"'([^']*)'", expected)
    if isinstance(found, str):
        return not_allowed(f"`{name}`: the word", found, words)
    return f"`{name}` must be one word, found {shown(found)}. Allowed: {', '.join(words)}"


def _headings(kind: type[BaseModel]) -> list[str]:
    """Headings as they are written in a file, where Python forbids some of them as names."""
    return [field.alias or name.removesuffix("_") for name, field in kind.model_fields.items() if name != "id"]
