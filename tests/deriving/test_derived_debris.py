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


@pytest.mark.parametrize(
    ("thickness", "changed_at", "answer"),
    [("1 mm", "36 000 km", "rising"), ("2 mm", "20 000 km", "as before"), ("0.5 mm", "20 000 km", "falling")],
)
def test_paste_on_the_magnet_goes_by_the_distance_of_its_fill(
    thickness: str, changed_at: str, answer: str
) -> None:
    """Before: 1 mm in 10 000 km. Today, at 40 000 km: 0.25, 0.1 and 0.025 mm in 1000 km."""
    looks = {"paste_thickness": thickness, "oil_changed_at": changed_at}
    before = {"earlier_paste_thickness": "1 mm", "earlier_oil_distance": "10 000 km"}

    assert word(fact("final drive @ rear", "paste_trend", {"final drive @ rear": {**looks, **before}})) == answer
