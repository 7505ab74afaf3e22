"""The fixed words: in one place, and ready for translators."""

from __future__ import annotations

import gettext
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.reporting.catalogue import FOLDER, TEMPLATE, fixed_words, template

TEMPLATES = FOLDER.parent


def test_the_template_for_translators_is_the_one_that_the_words_give() -> None:
    again = "run: python tests/reporting/catalogue.py"

    assert TEMPLATE.read_text(encoding="utf-8") == template(), again


@pytest.mark.skipif(shutil.which("msgfmt") is None, reason="the gettext tools are not installed here")
def test_gettext_takes_the_template_and_gives_every_word_back_by_its_place(tmp_path: Path) -> None:
    turned = re.sub(r'(msgid "(.+)"\nmsgstr) ""', r'\1 "\2!"', template())
    source, made = tmp_path / "xx.po", tmp_path / "xx.mo"
    source.write_text(turned, encoding="utf-8")
    subprocess.run(["msgfmt", "--check-format", "-o", str(made), str(source)], check=True)
    with made.open("rb") as file:
        translated = gettext.GNUTranslations(file)

    for place, text in fixed_words().items():
        assert translated.pgettext(place, text) == f"{text}!"


def test_no_page_holds_words_of_its_own() -> None:
    for path in (*TEMPLATES.glob("*.html"), *TEMPLATES.glob("parts/*.html")):
        source = path.read_text(encoding="utf-8")
        text = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", " ", source, flags=re.DOTALL)
        text = re.sub(r"<[^>]*>", " ", text)
        assert re.findall(r"[A-Za-z]{2,}", text) == [], path.name


def test_every_word_is_used_by_a_page_or_a_module() -> None:
    code = "".join(p.read_text(encoding="utf-8") for p in (TEMPLATES.parent / "inspector").rglob("*.py"))
    code += "".join(p.read_text(encoding="utf-8") for p in TEMPLATES.rglob("*.*") if p.suffix in (".html", ".js"))
    sections = {place.split(".")[0] for place in fixed_words()}
    plain = {
        "heading",
        "label",
        "text",
        "costs",
        "due",
        "photo",
        "drawing",
        "scale",
        "wear",
        "terminal",
        "carried",
    }

    assert plain <= sections
    unused = [
        place
        for place in fixed_words()
        if place.split(".")[0] in plain and not re.search(rf"\b{re.escape(place.split('.')[1])}\b", code)
    ]
    assert unused == []
