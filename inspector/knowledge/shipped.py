"""Find the data that ships with the program: inside the wheel, or beside the checkout."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path


def shipped(folder: str) -> Traversable:
    """Return the folder `rules`, `report_templates` or `samples`. Raises FileNotFoundError."""
    package, checkout = files("inspector"), Path(__file__).resolve().parents[2]
    for place in (package / "shipped" / folder, checkout / folder):
        if place.is_dir():
            return place
    raise FileNotFoundError(f"{folder}/ is missing from this installation of inspector")


def yaml_files(folder: Traversable, name: str) -> Iterator[tuple[str, Traversable]]:
    """Every YAML file below `folder` with the name it is reported under, in a fixed order."""
    for entry in sorted(folder.iterdir(), key=lambda item: item.name):
        if entry.is_dir():
            yield from yaml_files(entry, f"{name}/{entry.name}")
        elif entry.name.endswith(".yaml"):
            yield f"{name}/{entry.name}", entry
