"""What all knowledge files share: strict frozen models, citations, and errors in our own words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, Literal, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, StringConstraints, ValidationError

from inspector.knowledge.faults import Fault, not_allowed
from inspector.knowledge.yamlfile import Document, Path


class Entry(BaseModel):
    """A piece of knowledge: unknown keys are refused, nothing changes after loading."""

    model_config = ConfigDict(extra="forbid", frozen=True)


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
        seen: set[Path] = set()
        for problem in error.errors(include_url=False):
            place = (*path, *_real_path(problem["loc"], data))
            if place in seen:  # a union reports once for each of its kinds
                continue
            seen.add(place)
            by_key = problem["type"] == "extra_forbidden"
            into.append(document.fault(place, _words(problem, kind), key=by_key))
        return None


def _real_path(loc: tuple[str | int, ...], data: Any) -> Path:
    """Drop the parts of a pydantic location that name a member of a union rather than a place."""
    path: list[str | int] = []
    here = data
    for step in loc:
        in_list = isinstance(here, list) and isinstance(step, int) and step < len(here)
        if in_list or (isinstance(here, dict) and step in here):
            here = here[step]
            path.append(step)
    return tuple(path)


def _words(problem: Any, kind: type[BaseModel]) -> str:
    name = str(problem["loc"][-1]) if problem["loc"] else "this entry"
    found, context = problem.get("input"), problem.get("ctx", {})
    sentences: dict[str, Callable[[], str]] = {
        "missing": lambda: f"`{name}` is missing",
        "extra_forbidden": lambda: not_allowed("the heading", name, kind.model_fields),
        "string_type": lambda: f"`{name}` must be a text, found {_shown(found)}",
        "string_too_short": lambda: f"`{name}` is empty",
        "string_pattern_mismatch": lambda: f"`{found}` must be in small letters, figures and `_` only",
        "literal_error": lambda: f"`{name}` is {_shown(found)}; allowed: {context.get('expected')}",
        "dict_type": lambda: f"`{name}` must have headings below it, found {_shown(found)}",
        "model_type": lambda: f"`{name}` must have headings below it, found {_shown(found)}",
        "tuple_type": lambda: f"`{name}` must be a list, found {_shown(found)}",
        "too_short": lambda: f"`{name}` needs at least {context.get('min_length')} entry",
        "too_long": lambda: f"`{name}` may have at most {context.get('max_length')} entries",
        "int_parsing": lambda: f"`{name}` must be a whole number, found {_shown(found)}",
        "float_parsing": lambda: f"`{name}` must be a number, found {_shown(found)}",
        "value_error": lambda: str(context.get("error")),
    }
    sentence = sentences.get(problem["type"])
    return sentence() if sentence else f"`{name}`: {problem['msg']}, found {_shown(found)}"


def _shown(found: object) -> str:
    if found is None:
        return "nothing"
    if isinstance(found, dict | list):
        return "a list" if isinstance(found, list) else "headings"
    return f"`{str(found)[:60]}`"
