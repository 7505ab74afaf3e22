"""Write the fixed words as a template for gettext: report_templates/words/report.pot.

Run: python tests/reporting/catalogue.py
Each word has its place in en.toml as its context, so that equal words may be translated in different ways.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[2] / "report_templates" / "words"
TEMPLATE = FOLDER / "report.pot"
HEADER = """# The fixed words of the reports, for translators. Made from en.toml by tests/reporting/catalogue.py.
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"Language: \\n"
"""


def fixed_words() -> dict[str, str]:
    """Every fixed word by its place: `section.name`, and `section.name.2` in a list."""
    return dict(_leaves(tomllib.loads((FOLDER / "en.toml").read_text(encoding="utf-8")), ""))


def _leaves(value: Any, place: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, str):
        yield place, value
        return
    pairs = value.items() if isinstance(value, dict) else enumerate(value)
    for name, inner in pairs:
        yield from _leaves(inner, f"{place}.{name}" if place else str(name))


def template() -> str:
    """The whole template."""
    return HEADER + "".join(_entry(place, text) for place, text in fixed_words().items())


def _entry(place: str, text: str) -> str:
    flag = "#, python-brace-format\n" if "{" in text else ""
    return f'\n{flag}msgctxt "{_quoted(place)}"\nmsgid "{_quoted(text)}"\nmsgstr ""\n'


def _quoted(text: str) -> str:
    return text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")


if __name__ == "__main__":
    TEMPLATE.write_text(template(), encoding="utf-8")
