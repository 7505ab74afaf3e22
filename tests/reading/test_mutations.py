"""Hundreds of spoilt copies of the samples: each is assessed or refused in words, never an error of the tool."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

from inspector.cli import cli

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
TEXTS = [path.read_bytes() for path in sorted(SAMPLES.glob("*/record.yaml"))]
VALUE = re.compile(rb"(?<=: )[^\n{}#]+")
NASTY = [
    b"", b"~", b"[]", b"{}", b"[a, b]", b"{value: }", b"nan mm", b"1e999 mm", b"-1 mm", b"0 mm", b"1/0 in", b"*a",
    b"&a", b"!x", b'"', b"'", b"- x", b"a: b", b"\\", b"@", b"%", b"not checked", b"{not checked: }", b"unknown",
    b"2099-01-01", b"0", b"999999999999", b"\xf0\x9f\x8f\x8d", b'"\\e[31m"', b'"\\0"', b"x" * 5000, b"|", b">",
    b"yes", b"no", b"1.5 mm with caliper", b"1.5 mm \xc2\xb1 0 mm", b"3 bar", b"at least 4 mm", b"does not apply",
]  # fmt: skip


def delete_line(rng: random.Random, text: bytes) -> bytes:
    lines = text.splitlines(keepends=True)
    del lines[rng.randrange(len(lines))]
    return b"".join(lines)


def repeat_line(rng: random.Random, text: bytes) -> bytes:
    lines = text.splitlines(keepends=True)
    lines.insert(rng.randrange(len(lines)), rng.choice(lines))
    return b"".join(lines)


def shift_line(rng: random.Random, text: bytes) -> bytes:
    lines = text.splitlines(keepends=True)
    at = rng.randrange(len(lines))
    lines[at] = (
        rng.choice([b" ", b"  ", b"\t", b"      "]) + lines[at] if rng.random() < 0.5 else lines[at].lstrip()
    )
    return b"".join(lines)


def swap_values(rng: random.Random, text: bytes) -> bytes:
    spans = [match.span() for match in VALUE.finditer(text)]
    (a, b), (c, d) = sorted(rng.sample(spans, 2))
    return text[:a] + text[c:d] + text[b:c] + text[a:b] + text[d:]


def nasty_value(rng: random.Random, text: bytes) -> bytes:
    start, end = rng.choice([match.span() for match in VALUE.finditer(text)])
    return text[:start] + rng.choice(NASTY) + text[end:]


def random_bytes(rng: random.Random, text: bytes) -> bytes:
    at = rng.randrange(len(text))
    return text[:at] + rng.randbytes(rng.randint(1, 4)) + text[at + rng.randint(0, 3) :]


def random_sign(rng: random.Random, text: bytes) -> bytes:
    at = rng.randrange(len(text))
    return text[:at] + bytes([rng.choice(b":{}[],#&*!|>'\"%@`-?~ \n\r\t0")]) + text[at + rng.randint(0, 1) :]


def cut_off(rng: random.Random, text: bytes) -> bytes:
    return text[: rng.randrange(len(text))]


CHANGES: list[Callable[[random.Random, bytes], bytes]] = [
    delete_line, repeat_line, shift_line, swap_values, nasty_value, random_bytes, random_sign, cut_off,
]  # fmt: skip
PLACE = re.compile(r":\d+:\d+: .")


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: change.__name__)
def test_a_spoilt_record_is_assessed_or_refused_with_a_place(
    tmp_path: Path, change: Callable[[random.Random, bytes], bytes]
) -> None:
    rng = random.Random(change.__name__)
    path, runner, seen = tmp_path / "record.yaml", CliRunner(), {0: 0, 2: 0}
    for round_ in range(30):
        spoilt = rng.choice(TEXTS)
        for _ in range(1 + round_ % 3):
            spoilt = change(rng, spoilt) or b"x"
        path.write_bytes(spoilt)
        result = runner.invoke(cli, ["assess", str(path)], catch_exceptions=False, terminal_width=80)
        assert result.exit_code in (0, 2), spoilt
        seen[result.exit_code] += 1
        if result.exit_code == 2:
            lines = result.stderr.splitlines()
            assert lines, spoilt
            assert all(line.startswith(str(path)) and PLACE.match(line, len(str(path))) for line in lines), lines
        assert "\x1b" not in result.output
    assert seen[2] > 0
