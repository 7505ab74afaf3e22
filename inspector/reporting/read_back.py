"""Read a report back: what it carries, and whether its pages say the same."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError

from inspector.knowledge.wording import words
from inspector.reporting.carried import ATTACHED_NAME, Carried, printed_fingerprints
from inspector.reporting.glyphs import own_letters
from inspector.reporting.words import verdict_sentence
from inspector.weighing.assessment import Assessment

MOST_BYTES = 200_000_000
_MOST_ATTACHED = 50_000_000


class Unreadable(ValueError):
    """A file that is no report that can be read back; the message says why."""


@dataclass(frozen=True)
class ReadBack:
    """A report read back: what is attached, and the text of its pages without white space."""

    carried: Carried
    printed: str


def read_back(path: Path) -> ReadBack:
    """Read the PDF at `path`. Raises Unreadable, and OSError."""
    from pypdf import PdfReader
    from pypdf.errors import PyPdfError

    wording = words()["verify"]
    if path.stat().st_size > MOST_BYTES:
        raise Unreadable(wording["too_large"])
    try:
        reader = PdfReader(path)
        if reader.is_encrypted:
            raise Unreadable(wording["locked"])
        attached = reader.attachments.get(ATTACHED_NAME, [])
        printed = squeezed("".join(page.extract_text() for page in reader.pages))
    except (PyPdfError, RecursionError, KeyError, IndexError, TypeError, AttributeError) as error:
        raise Unreadable(wording["damaged"]) from error
    except ValueError as error:
        raise error if isinstance(error, Unreadable) else Unreadable(wording["damaged"]) from error
    if len(attached) != 1:
        raise Unreadable(wording["nothing_attached" if not attached else "attached_twice"])
    return ReadBack(_carried(bytes(attached[0])), printed)


def _carried(raw: bytes) -> Carried:
    wording = words()["verify"]
    if len(raw) > _MOST_ATTACHED:
        raise Unreadable(wording["too_large"])
    try:
        return Carried.model_validate_json(raw)
    except ValidationError as error:
        raise Unreadable(wording["attachment_damaged"]) from error


def squeezed(text: str) -> str:
    """Text without white space: a page breaks its lines where it likes."""
    return re.sub(r"\s+", "", text)


def not_printed(found: ReadBack) -> list[str]:
    """What is attached and does not stand on the pages: fingerprints, the verdict, findings.

    Sentences with letters of another font are passed over: a page may turn them round, join or spell them out.
    Raises Unreadable when the results are of another form than this version prints.
    """
    try:
        assessment = Assessment.model_validate(found.carried.assessment)
        sentence = verdict_sentence(assessment)
    except (ValidationError, KeyError) as error:
        raise Unreadable(words()["verify"]["other_form"]) from error
    wanted = {f"{words()['carried'][name]}: {value}": value for name, value in
              printed_fingerprints(found.carried).items()}  # fmt: skip
    wanted[sentence] = sentence
    for entry in (*assessment.findings, *assessment.causes):
        wanted[f"{entry.title} ({entry.place})"] = entry.title
        wanted[entry.says] = entry.says
    return [
        name
        for name, text in wanted.items()
        if all(letter.isspace() or ord(letter) in own_letters() for letter in text)
        and squeezed(text) not in found.printed
    ]
