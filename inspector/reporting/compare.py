"""Two sets of results side by side, finding by finding. Works on plain data: one may come from another version."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

Results = dict[str, Any]
_KEYS = {
    "findings": ("rule", "part", "place"),
    "causes": ("rule", "part", "place"),
    "ruled_out": ("rule", "part", "place"),
    "measurements": ("part", "place", "name"),
    "unseen": ("part", "place", "name"),
    "due": ("part", "place", "what"),
}
# labels are counted anew each time; photos lie beside the record and are not carried; scales only draw
_PASSED_OVER = ("label", "labels", "symptoms", "explained_by", "photo", "scale")
_SHOWN = ("level", "class_name", "certainty", "says", "value", "limit", "standing", "forecast", "because")
_ABOUT_THE_TOOL = ("version", "rules_judged", "shown_units")


@dataclass(frozen=True)
class Difference:
    """One thing that is not as it was: in which list, which entry, and each heading with before and after."""

    where: str
    kind: Literal["gone", "new", "changed"]
    what: str
    headings: tuple[tuple[str, str, str], ...] = ()
    others: tuple[str, ...] = ()


def differences(before: Results, now: Results) -> list[Difference]:
    """Everything that differs, findings first; version and number of rules are told elsewhere."""
    found = list(_verdict(before.get("verdict", {}), now.get("verdict", {})))
    for where, key in _KEYS.items():
        found += _lists(where, key, before.get(where) or [], now.get(where) or [])
    rest = [name for name in dict.fromkeys((*before, *now)) if name not in (*_KEYS, *_ABOUT_THE_TOOL, "verdict")]
    others = [name for name in rest if _bare(before.get(name)) != _bare(now.get(name))]
    if others:
        found.append(Difference("others", "changed", "", others=tuple(others)))
    return found


def _verdict(before: Results, now: Results) -> Iterator[Difference]:
    headings = tuple(_headings(before, now, ("level", "leading_title", "leading_place", "critical_unseen")))
    if headings:
        yield Difference("verdict", "changed", "", headings)


def _lists(where: str, key: tuple[str, ...], before: list[Results], now: list[Results]) -> Iterator[Difference]:
    old, new = _by_key(before, key), _by_key(now, key)
    for name in (*old, *(one for one in new if one not in old)):
        if name not in new:
            yield Difference(where, "gone", _called(old[name]))
        elif name not in old:
            yield Difference(where, "new", _called(new[name]))
        elif _bare(old[name]) != _bare(new[name]):
            headings = tuple(_headings(old[name], new[name], _SHOWN))
            told = [heading for heading, _, _ in headings]
            others = [h for h in dict.fromkeys((*old[name], *new[name])) if h not in (*told, *_PASSED_OVER)
                      and _bare(old[name].get(h)) != _bare(new[name].get(h))]  # fmt: skip
            yield Difference(where, "changed", _called(new[name]), headings, tuple(others))


def _by_key(entries: list[Results], key: tuple[str, ...]) -> dict[tuple[Any, ...], Results]:
    found: dict[tuple[Any, ...], Results] = {}
    for entry in entries:
        name = tuple(entry.get(one) for one in key)
        again = 1
        while (*name, again) in found:
            again += 1
        found[*name, again] = entry
    return found


def _called(entry: Results) -> str:
    """An entry in words: its title, or the name of the look, with its part and place."""
    name = entry.get("title") or str(entry.get("name") or entry.get("what") or "").replace("_", " ")
    rule = f" [{entry['rule']}]" if entry.get("rule") else ""
    return f"{name} ({entry.get('part')}, {entry.get('place')}){rule}"


def _headings(before: Results, now: Results, names: tuple[str, ...]) -> Iterator[tuple[str, str, str]]:
    for name in names:
        if before.get(name) != now.get(name):
            yield name, _word(before.get(name)), _word(now.get(name))


def _word(value: Any) -> str:
    return "–" if value is None else str(value)


def _bare(value: Any) -> Any:
    """The value without what is passed over, at any depth."""
    if isinstance(value, dict):
        return {name: _bare(one) for name, one in value.items() if name not in _PASSED_OVER}
    return [_bare(one) for one in value] if isinstance(value, list) else value
