"""One figure for a whole folder of knowledge: it changes when a name or a single letter of any file changes."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import cache
from importlib.resources.abc import Traversable

from inspector.knowledge.shipped import shipped, yaml_files


def fingerprint(files: Iterable[tuple[str, Traversable]]) -> str:
    """SHA-256 over the names and contents of files, in the order given, with the length before each."""
    digest = hashlib.sha256()
    for name, file in files:
        for part in (name.encode(), file.read_bytes()):
            digest.update(f"{len(part)} ".encode() + part)
    return digest.hexdigest()


@cache
def rules_fingerprint() -> str:
    """The fingerprint of the rules that ship with the program."""
    return fingerprint(yaml_files(shipped("rules"), "rules"))


def text_fingerprint(text: str) -> str:
    """SHA-256 of a text."""
    return hashlib.sha256(text.encode()).hexdigest()
