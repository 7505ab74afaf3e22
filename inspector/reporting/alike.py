"""Findings that say the same of several places, as one entry that names them all."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.weighing.assessment import FindingEntry

_OF_ONE_PLACE = {"label": "", "place": "", "says": "", "certainty": "", "evidence": (), "explained_by": ()}


@dataclass(frozen=True)
class Alike:
    """One finding or suspicion, or one finding at several places; all but what was seen there is the same."""

    entries: tuple[FindingEntry, ...]

    @property
    def first(self) -> FindingEntry:
        """What holds for all places."""
        return self.entries[0]

    @property
    def labels(self) -> tuple[str, ...]:
        """The number of each place, or the letter of a suspicion."""
        return tuple(entry.label for entry in self.entries)

    @property
    def label(self) -> str:
        """The numbers as they are printed."""
        return ", ".join(self.labels)

    @property
    def where(self) -> str:
        """The places as one phrase."""
        return ", ".join(dict.fromkeys(entry.place for entry in self.entries))

    @property
    def certainty(self) -> str | None:
        """How sure it is; None where that differs from place to place."""
        sure = {entry.certainty for entry in self.entries}
        return self.first.certainty if len(sure) == 1 else None

    @property
    def explained_by(self) -> tuple[str, ...]:
        """Letters of the causes that any of them may come from."""
        return tuple(dict.fromkeys(label for entry in self.entries for label in entry.explained_by))

    @property
    def suspected(self) -> bool:
        """Whether this is a suspected cause (a letter), not a finding (a number)."""
        return not self.first.label.isdigit()


def alike(entries: Iterable[FindingEntry]) -> tuple[Alike, ...]:
    """One entry for all places of which the same is said; in the order of the first of them."""
    groups: dict[FindingEntry, list[FindingEntry]] = {}
    for entry in entries:
        groups.setdefault(entry.model_copy(update=_OF_ONE_PLACE), []).append(entry)
    return tuple(Alike(tuple(group)) for group in groups.values())
