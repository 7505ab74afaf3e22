"""How the PDF is laid out: findings in one piece, drawings with their words."""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from inspector.reporting.assets import fetcher
from inspector.reporting.html import to_paper
from tests.records import assessed
from tests.reporting.test_pdf import CASES, structure, written


@pytest.mark.parametrize("case", ["worn", "hostile"])
def test_a_finding_that_fits_a_page_stands_on_one(case: str) -> None:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    html = HTML(string=to_paper(CASES[case](), "owner"), url_fetcher=fetcher(), base_url="asset:")
    pages: dict[str, list[float]] = {}
    for page in html.render(font_config=FontConfiguration()).pages:
        for box in page._page_box.descendants():
            if box.element_tag == "article" and box.element is not None and hasattr(box, "height"):
                pages.setdefault(box.element.get("id"), []).append(box.height / page._page_box.height)

    assert len(pages) == len(CASES[case]().findings) + len(CASES[case]().causes)
    broken = {name for name, parts in pages.items() if len(parts) > 1 and sum(parts) < 0.9}
    assert broken == set()


def test_the_drawing_and_the_scale_are_in_the_pdf_with_their_words() -> None:
    root = PdfReader(BytesIO(written("worn", "mechanic"))).trailer["/Root"]
    elements = list(structure(root["/StructTreeRoot"]["/K"]))
    said = [str(one.get("/Alt")) for one in elements if one.get("/S") == "/Figure"]

    machine = next(text for text in said if text.startswith("Drawing of a shaft drive motorcycle"))
    assert "1: brake pad" in machine
    assert any(text.startswith("Scale: ") and "limit is" in text for text in said)


def test_scales_of_one_finding_at_two_places_stand_below_each_other_and_on_the_paper() -> None:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    thin = {
        f"brake pad @ front {side} inner": {"friction_material_thickness": "1.1 mm"} for side in ("left", "right")
    }
    html = HTML(string=to_paper(assessed(thin), "buyer"), url_fetcher=fetcher(), base_url="asset:")
    drawn = [
        (round(box.position_y), box.position_x + box.width, page.width)
        for page in html.render(font_config=FontConfiguration()).pages
        for box in page._page_box.descendants()
        if box.element_tag == "aside" and box.element is not None and hasattr(box, "width")
    ]

    assert len({top for top, _, _ in drawn}) == 2
    assert all(right <= wide - 60 for _, right, wide in drawn)  # px; the margin is 16 mm
