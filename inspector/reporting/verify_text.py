"""What `inspector verify` prints: whether the file is whole, what has changed since, and what differs."""

from __future__ import annotations

from typing import Any

from inspector.knowledge.fingerprint import rules_fingerprint, text_fingerprint
from inspector.knowledge.wording import words
from inspector.reporting.carried import Carried, altered, printed_fingerprints, short
from inspector.reporting.compare import Difference, differences
from inspector.reporting.lines import bullet, paragraph
from inspector.reporting.read_back import ReadBack, Unreadable, not_printed
from inspector.weighing.weigh import program_version


def checks_text(found: ReadBack, at_hand: str | None, at_hand_name: str, width: int) -> tuple[list[str], bool]:
    """Lines about the file itself, and whether nothing in it was altered."""
    carried, wording = found.carried, words()["verify"]
    made = wording["made_by"].format(version=carried.version, record=carried.record.name, reader=carried.reader)
    here = program_version()
    if here != carried.version:
        made += " " + wording["made_by_other"].format(here=here)
    lines = [*paragraph(made, width), *paragraph(wording["fingerprints"], width)]
    for name, value in printed_fingerprints(carried).items():
        lines += bullet(f"{words()['carried'][name]}: {value}", width)
    hashes, whole = _hashes(carried, width)
    pages, printed = _pages(found, width)
    lines += [*hashes, *pages, *_rules(carried, width)]
    same = at_hand is None or text_fingerprint(at_hand) == text_fingerprint(carried.record.text)
    if at_hand is not None:
        line = first_difference(carried.record.text, at_hand)
        text = wording["record_same" if same else "record_changed"].format(record=at_hand_name, line=line)
        lines += paragraph(text, width)
    return lines, whole and printed and same


def _hashes(carried: Carried, width: int) -> tuple[list[str], bool]:
    wording, found = words()["verify"], altered(carried)
    if not found:
        return paragraph(wording["whole"], width), True
    texts = [wording["altered"].format(what=words()["carried"][name].lower()) for name in found]
    return [line for text in texts for line in paragraph(text, width)], False


def _pages(found: ReadBack, width: int) -> tuple[list[str], bool]:
    wording = words()["verify"]
    try:
        missing = not_printed(found)
    except Unreadable as error:
        return paragraph(f"{str(error)[:1].upper()}{str(error)[1:]}.", width), True
    if not missing:
        return paragraph(wording["printed"], width), True
    texts = [wording["not_printed"].format(what=what) for what in missing]
    return [line for text in texts for line in paragraph(text, width)], False


def _rules(carried: Carried, width: int) -> list[str]:
    now = rules_fingerprint()
    key = "rules_same" if now == carried.rules_sha256 else "rules_changed"
    text = words()["verify"][key].format(now=short(now), before=short(carried.rules_sha256))
    return paragraph(text, width)


def first_difference(before: str, now: str) -> int:
    """Number of the first line that is not the same in both texts."""
    old, new = before.splitlines(), now.splitlines()
    pairs = zip(old, new, strict=False)
    return next((line for line, (a, b) in enumerate(pairs, 1) if a != b), min(len(old), len(new)) + 1)


def differences_text(carried: Carried, now: dict[str, Any], width: int) -> tuple[list[str], bool]:
    """Lines about the judgement made again, and whether it is the same."""
    wording, found = words()["verify"], differences(carried.assessment, now)
    lines = ["", *paragraph(wording["differs" if found else "same"], width)]
    for one in found:
        lines += _difference(one, width)
    return [*lines, "", *paragraph(wording["meaning"], width)], not found


def _difference(one: Difference, width: int) -> list[str]:
    wording, where = words()["verify"], words()["verify_where"][one.where]
    lines = bullet(f"{where} {wording[one.kind]}{': ' if one.what else ''}{one.what}", width)
    for heading, before, now in one.headings:
        text = wording["was"].format(heading=heading.replace("_", " "), before=before, now=now)
        lines += bullet(text, width, indent="    ")
    if one.others:
        named = ", ".join(name.replace("_", " ") for name in one.others)
        lines += bullet(wording["also"].format(others=named), width, indent="    ")
    return lines
