"""Change single entries of a YAML text and keep all else as it stands: comments, quotes, order, spelling.

ruamel hangs a comment onto the entry before it. Whoever adds an entry behind the last one of a block would push
it below the comment that leads over to the next block; so such a tail is cut off first and hung onto the new one.
"""

from __future__ import annotations

from collections.abc import Callable
from io import StringIO
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from ruamel.yaml import YAML

_WIDE = 110  # columns; more when a line of the text is longer already
_NO_END = 1 << 30
_NOTHING = "tag:yaml.org,2002:null"
_NULL = ("", "~", "null", "Null", "NULL")  # as inspector/knowledge/yamlfile.py reads them
_END = 2  # where ruamel keeps what stands behind a value


def _yaml(like: str = "") -> YAML:
    from ruamel.yaml import YAML
    from ruamel.yaml.nodes import ScalarNode
    from ruamel.yaml.resolver import VersionedResolver
    from ruamel.yaml.tag import Tag

    class TextResolver(VersionedResolver):
        """Every scalar is a text, as in a record: 0122 keeps its nought, a date stays as typed."""

        def resolve(self, kind: Any, value: Any, implicit: Any) -> Any:
            if kind is not ScalarNode:
                return super().resolve(kind, value, implicit)
            nothing = implicit[0] and value in _NULL
            return Tag(suffix=_NOTHING) if nothing else self.DEFAULT_SCALAR_TAG

    yaml = YAML()
    yaml.Resolver = TextResolver
    yaml.Emitter = _emitter()
    yaml.preserve_quotes = True
    yaml.width = max([_WIDE, *(len(line) for line in like.splitlines())])
    offset = _dash(like)
    yaml.indent(mapping=2, sequence=offset + 2, offset=offset)
    return yaml


def _emitter() -> Any:
    from ruamel.yaml.emitter import Emitter

    class WholeTexts(Emitter):
        """A long line is broken between two entries only: within a heading a break would make it unreadable."""

        def _whole(self, write: Callable[[Any, Any], None], text: Any, split: Any) -> None:
            width, self.best_width = self.best_width, _NO_END
            write(text, split)
            self.best_width = width

        def write_plain(self, text: Any, split: Any = True) -> None:
            self._whole(super().write_plain, text, split)

        def write_single_quoted(self, text: Any, split: Any = True) -> None:
            self._whole(super().write_single_quoted, text, split)

        def write_double_quoted(self, text: Any, split: Any = True) -> None:
            self._whole(super().write_double_quoted, text, split)

    return WholeTexts


def load(text: str) -> Any:
    """The text as a tree that remembers how it was written. The text has been read without a fault before."""
    return _yaml().load(text)


def dump(tree: Any, like: str = "") -> str:
    """The tree as text; lists are indented as in `like`."""
    out = StringIO()
    _yaml(like).dump(tree, out)
    return out.getvalue()


def _dash(text: str) -> int:
    """How far the dashes of the first list stand in from the heading above it; 2 where there is none."""
    heading = 0
    for line in text.splitlines():
        bare = line.lstrip(" ")
        if bare.startswith("- "):
            return max(0, len(line) - len(bare) - heading)
        if bare and not bare.startswith("#"):
            heading = len(line) - len(bare)
    return 2


def spoken(text: str) -> Any:
    """A text as it is written: with double quotes where a colon would cut it in two."""
    from ruamel.yaml.scalarstring import DoubleQuotedScalarString

    return DoubleQuotedScalarString(text) if ": " in text or " #" in text or text.endswith(":") else text


def node(value: Any) -> Any:
    """Plain data as a piece of a tree."""
    from ruamel.yaml.comments import CommentedMap, CommentedSeq

    if isinstance(value, dict):
        return CommentedMap((key, node(one)) for key, one in value.items())
    if isinstance(value, list):
        return CommentedSeq(node(one) for one in value)
    return spoken(value) if isinstance(value, str) else value


def put(table: Any, key: str, value: Any, *, apart: bool = False) -> None:
    """Set an entry; a new one comes last, before the comment that leads over to the next block.

    With `apart` it begins a block of its own: after that comment, and after an empty line.
    """
    if key in table:
        tail = _take(table, key, with_own=True)
        table[key] = node(value)
        _give(table, key, tail)
        return
    last = next(reversed(table), None)
    tail = _take(table, last, with_own=False) if last is not None else ""
    if apart and last is not None:
        _give(table, last, tail or "\n\n")
        tail = ""
    table[key] = node(value)
    _give(table, key, tail)


def append(items: Any, more: list[Any]) -> None:
    """Add to a list; comments between its items stay."""
    tail = _take(items, len(items) - 1, with_own=False) if items else ""
    items.extend(node(one) for one in more)
    _give(items, len(items) - 1, tail)


def shorten(items: Any, length: int) -> None:
    """Take items off the end of a list of which at least one stays."""
    while len(items) > max(length, 1):
        tail = _take(items, len(items) - 1, with_own=True)
        items.ca.items.pop(len(items) - 1, None)
        del items[len(items) - 1]  # counted from the front, or ruamel moves the comments of the others
        _give(items, len(items) - 1, "\n" + tail if tail.startswith("#") else tail)


def remove(above: Any, table: Any, key: str) -> None:
    """Take an entry out of `table` (which stands in `above`); a comment behind it stays."""
    keys = list(table)
    position = keys.index(key)
    tail = _take(table, key, with_own=True)
    del table[key]
    table.ca.items.pop(key, None)
    if not tail:
        return
    if tail.startswith("#"):
        tail = "\n" + tail
    if position:
        _give(table, keys[position - 1], tail)
    else:
        _before_all(above, table, tail)


def _before_all(above: Any, table: Any, tail: str) -> None:
    """A comment whose entry was the first of its table goes to the entry that stands before the table."""
    names = list(above)
    position = next((i for i, name in enumerate(names) if above[name] is table), 0)
    if table:
        first = next(iter(table))
        table.yaml_set_comment_before_after_key(first, before=_bare(tail), indent=2)
    elif position:
        _give(above, names[position - 1], tail)
    else:
        above.yaml_set_start_comment(_bare(tail))


def _bare(tail: str) -> str:
    return "\n".join(line.strip().removeprefix("#").strip() for line in tail.splitlines() if line.strip())


def _leaf(table: Any, key: Any) -> tuple[Any, Any]:
    """The last entry of all that stands below `key`."""
    value = table[key]
    while getattr(value, "fa", None) is not None and not value.fa.flow_style() and len(value):
        table, key = value, (next(reversed(value)) if hasattr(value, "keys") else len(value) - 1)
        value = table[key]
    return table, key


def _token(table: Any, key: Any) -> Any:
    """What stands behind the value of an entry: its own comment, blank lines, the comments before the next one."""
    held = table.ca.items.get(key)
    place = _END if hasattr(table, "keys") else 0
    if held is not None and len(held) > place and held[place] is not None:
        return held[place]
    value = table[key]
    comment = value.ca.comment if hasattr(value, "ca") else None
    return comment[0] if comment else None


def _take(table: Any, key: Any, *, with_own: bool) -> str:
    """Cut off what stands behind an entry: all of it, or only what follows the entry's own comment."""
    table, key = _leaf(table, key)
    token = _token(table, key)
    if token is None:
        return ""
    text = str(token.value)
    own, end, rest = text.partition("\n")
    if with_own:
        _set(table, key, "")
        return text
    _set(table, key, own + end if own.strip() else "")
    return "\n" + rest if rest else ""


def _give(table: Any, key: Any, tail: str) -> None:
    """Put a tail behind an entry, after its own comment."""
    if not tail:
        return
    table, key = _leaf(table, key)
    token = _token(table, key)
    text = str(token.value) if token is not None else ""
    _set(table, key, text + (tail.removeprefix("\n") if text else tail))


def _set(table: Any, key: Any, text: str) -> None:
    from ruamel.yaml.error import CommentMark
    from ruamel.yaml.tokens import CommentToken

    value, token = table[key], _token(table, key)
    place = _END if hasattr(table, "keys") else 0
    column = token.start_mark.column if token and token.value.partition("\n")[0] == text.partition("\n")[0] else 0
    fresh = CommentToken(text, CommentMark(column)) if text else None
    inside = hasattr(value, "ca") and bool(value.ca.comment) and value.ca.comment[0] is not None
    if inside:  # a list or table between brackets keeps it itself, and its entry knows it as well
        value.ca.comment[0] = fresh
    if key in table.ca.items and len(table.ca.items[key]) > place:
        table.ca.items[key][place] = fresh
    elif fresh is not None and not inside:
        held: list[Any] = [None, None, None, None]
        held[place] = fresh
        table.ca.items[key] = held
