"""What a report may read: its own font from memory, and nothing else."""

from __future__ import annotations

import pytest

from inspector.reporting.assets import NotFetched, assets, fetcher
from tests.reporting.cases import FILE, OUTSIDE


@pytest.mark.parametrize(
    "address",
    [
        FILE,
        __file__,
        OUTSIDE,
        OUTSIDE.replace("http", "https"),
        OUTSIDE.replace("http", "ftp"),
        "data:text/plain,a",
        "asset:../text.ttf",
        "asset:",
        "ASSET:text.ttf",
        "",
    ],
)
def test_the_fetcher_hands_out_only_its_own_files(address: str) -> None:
    with pytest.raises(NotFetched):
        fetcher().fetch(address)


def test_the_fetcher_hands_out_the_font() -> None:
    assert fetcher().fetch("asset:text.ttf").read() == assets()["text.ttf"]
