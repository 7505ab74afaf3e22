"""Pieces on the drain magnet, measured and counted (US Army TM 1-1520-238-23, nose gearbox)."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, sentences, word

DRIVE = "final drive @ rear"


@pytest.mark.parametrize(
    ("length", "width", "pieces", "answer"),
    [
        ("4.9 mm", "1.7 mm", "0", "replace"),  # one splinter over 1/16 by 3/16 in
        ("1.7 mm", "4.9 mm", "0", "replace"),  # whichever side is called length
        ("4.0 mm", "1.7 mm", "10", "clean and check again"),
        ("4.0 mm", "1.7 mm", "11", "replace"),  # more than ten of 1/16 by 1/16 in
        ("6.0 mm", "0.3 mm", "0", "clean and check again"),  # a thin needle is graded by its look
    ],
)
def test_the_published_line(length: str, width: str, pieces: str, answer: str) -> None:
    looks = {"longest_piece": length, "longest_piece_width": width, "pieces": pieces}

    assert word(fact(DRIVE, "pieces_found", {DRIVE: looks})) == answer


def test_a_splinter_that_was_called_a_flake_is_told_once_and_by_the_worse_rule() -> None:
    says = sentences({DRIVE: {"magnet_debris": "flakes", "longest_piece": "5 mm", "longest_piece_width": "2 mm"}})

    assert "final_drive/pieces_past_published_line" in says
    assert "final_drive/magnet_flakes" not in says
