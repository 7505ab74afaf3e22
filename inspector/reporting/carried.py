"""What a report carries inside itself, so that it can be judged again: the record, the results, their hashes.

No signature: whoever can change the file can change the hashes with it.
"""

from __future__ import annotations

import json
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict

from inspector.knowledge.fingerprint import rules_fingerprint, text_fingerprint
from inspector.weighing.assessment import Assessment

ATTACHED_NAME = "inspector.json"
_SHORT = 16


class CarriedText(BaseModel):
    """A file as it was read: its name without a folder, its text, and the hash of the text."""

    model_config = ConfigDict(frozen=True)

    name: str
    text: str
    sha256: str


class Carried(BaseModel):
    """Everything needed to judge a record again. The results stay plain data: another version may have others."""

    model_config = ConfigDict(frozen=True)

    what: Literal["inspector report"] = "inspector report"
    format: Literal[1] = 1
    version: str
    reader: str
    record: CarriedText
    prices: CarriedText | None = None
    rules_sha256: str
    assessment_sha256: str
    assessment: dict[str, Any]


def carried_text(name: str, text: str) -> CarriedText:
    """A file with its hash."""
    return CarriedText(name=name, text=text, sha256=text_fingerprint(text))


def make_carried(
    assessment: Assessment, reader: str, record: CarriedText, prices: CarriedText | None = None
) -> Carried:
    """What the report of this assessment carries, with the hash of the rules at hand."""
    results = plain_results(assessment)
    return Carried(
        version=assessment.version,
        reader=reader,
        record=record,
        prices=prices,
        rules_sha256=rules_fingerprint(),
        assessment_sha256=results_fingerprint(results),
        assessment=results,
    )


def plain_results(assessment: Assessment) -> dict[str, Any]:
    """The assessment as it looks after a way through JSON."""
    results: dict[str, Any] = json.loads(assessment.model_dump_json())
    return results


def results_fingerprint(results: dict[str, Any]) -> str:
    """Hash of results that does not depend on the order in which they are written."""
    return text_fingerprint(json.dumps(results, sort_keys=True, ensure_ascii=False, separators=(",", ":")))


def to_bytes(carried: Carried) -> bytes:
    """The attached file."""
    return carried.model_dump_json(indent=1).encode()


def short(fingerprint: str) -> str:
    """The first figures of a hash in groups of four, as they are printed and compared by eye."""
    return " ".join(fingerprint[start : start + 4] for start in range(0, _SHORT, 4))


def printed_fingerprints(carried: Carried) -> dict[str, str]:
    """What stands on the last page, by the name of its line in the words of the report."""
    found = {
        "record": carried.record.sha256,
        "rules": carried.rules_sha256,
        "results": carried.assessment_sha256,
    }
    if carried.prices is not None:
        found["prices"] = carried.prices.sha256
    return {name: short(value) for name, value in found.items()}


def altered(carried: Carried) -> list[str]:
    """Names of the parts that do not agree with their own hash."""
    found = []
    if text_fingerprint(carried.record.text) != carried.record.sha256:
        found.append("record")
    if carried.prices is not None and text_fingerprint(carried.prices.text) != carried.prices.sha256:
        found.append("prices")
    if results_fingerprint(carried.assessment) != carried.assessment_sha256:
        found.append("results")
    return found
