"""Where the PDF's font comes from, and a fetcher that hands out nothing else."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from io import BytesIO
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from weasyprint.urls import URLFetcher

_FONTS = {
    "text.ttf": "SourceSans3[wght].ttf",
    "text-italic.ttf": "SourceSans3-Italic[wght].ttf",
}


class NotFetched(ValueError):
    """An address that a report may not read."""


@cache
def assets() -> dict[str, bytes]:
    """The files a report may read, by the name behind `asset:`."""
    folder = files("fontpkg_source_sans_3") / "files"
    return {name: (folder / file).read_bytes() for name, file in _FONTS.items()}


@cache
def own_font() -> Any:
    """The font of the report, to ask it about its letters."""
    from fontTools.ttLib import TTFont

    return TTFont(BytesIO(assets()["text.ttf"]), lazy=True)


def fetcher(more: Mapping[str, bytes] | None = None) -> URLFetcher:
    """A fetcher that serves `asset:NAME` from memory and refuses every other address: no file, no network."""
    served = {**assets(), **(more or {})}
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class AssetFetcher(URLFetcher):  # type: ignore[misc]
        def fetch(self, url: str, headers: Any = None) -> URLFetcherResponse:
            scheme, _, name = url.partition(":")
            if scheme != "asset" or name not in served:
                raise NotFetched(f"a report reads no other file or address: {url[:80]}")
            kind = "image/jpeg" if name.endswith(".jpg") else "font/ttf"
            return URLFetcherResponse(url, body=served[name], headers={"Content-Type": kind})

    return AssetFetcher()
