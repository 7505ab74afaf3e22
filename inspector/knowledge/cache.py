"""Keep the checked knowledge between runs. The key is everything it is made from, so it cannot be stale.

Reading and checking hundreds of rule files takes longer than judging a record; hashing them does not.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import pickle
import sys
from collections.abc import Callable, Iterable
from importlib.metadata import version
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import TypeVar

Kept = TypeVar("Kept")
_MOST_KEPT = 4


def cached(sources: Iterable[tuple[str, Traversable]], make: Callable[[], Kept], kind: type[Kept]) -> Kept:
    """What `make` returns, or what it returned before for the same files, program, Python and libraries."""
    place = _folder() / f"{_key(sources)}.pickle"
    with contextlib.suppress(OSError, pickle.UnpicklingError, EOFError, AttributeError, ImportError, IndexError):
        if place.stat().st_uid == os.getuid():  # a pickle is code: only one's own is read
            kept = pickle.loads(place.read_bytes())
            if isinstance(kept, kind):
                return kept
    made = make()
    with contextlib.suppress(OSError):  # a folder that cannot be written costs time, nothing else
        _keep(place, pickle.dumps(made, protocol=pickle.HIGHEST_PROTOCOL))
    return made


def _folder() -> Path:
    base = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(base) / "inspector"


def _key(sources: Iterable[tuple[str, Traversable]]) -> str:
    digest = hashlib.sha256(f"{sys.version} pydantic {version('pydantic')}".encode())
    for folder in ("knowledge", "quantities"):
        code = files("inspector") / folder
        for entry in sorted(code.iterdir(), key=lambda item: item.name):
            if entry.name.endswith(".py"):
                digest.update(entry.read_bytes())
    for name, file in sources:
        content = file.read_bytes()
        digest.update(f"{name} {len(content)} ".encode() + content)
    return digest.hexdigest()[:32]


def _keep(place: Path, content: bytes) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    temporary = place.with_suffix(f".{os.getpid()}")
    temporary.write_bytes(content)
    os.replace(temporary, place)
    kept = sorted(place.parent.glob("*.pickle"), key=lambda one: one.stat().st_mtime)
    for old in kept[:-_MOST_KEPT]:
        old.unlink(missing_ok=True)
