"""The pages of grid rules: one a country, every entry with its sign and its sources, and what it is worth."""

from __future__ import annotations

import pytest

from sld.gallery.grid import grid_pages
from sld.grid import GENERIC, country, known

CODES = (*known(), GENERIC)
PAGES = grid_pages()


def test_there_is_a_page_for_each_country_and_one_that_lists_them() -> None:
    assert set(PAGES) == {"grid-rules.md", *(f"grid-{code}.md" for code in CODES)}
    assert all(f"[{code}](grid-{code}.md)" in PAGES["grid-rules.md"] for code in CODES)


@pytest.mark.parametrize("code", CODES)
def test_every_entry_stands_on_its_page_with_its_standing(code: str) -> None:
    page, rules = PAGES[f"grid-{code}.md"], country(code)
    for group in ("procedures", "duties", "interface", "imbalance", "papers", "points", "sets", "settings", "notices"):
        for entry in getattr(rules, group):
            (line,) = [each for each in page.splitlines() if each.startswith(f"| `{group}.{entry.name}` |")]
            assert line.endswith(f"| {entry.standing.phrase} |")


@pytest.mark.parametrize(
    ("code", "entry", "told"),
    [
        ("DE", "interface.external", "> 30 kVA"),
        ("AT", "interface.external", "≥ 30 kVA"),
        ("GB", "procedures.connect_and_notify", "≤ 16 A"),
        ("CH", "procedures.request", "(gossau: \\> 3.7 kVA)"),
    ],
)
def test_the_sign_stands_beside_the_limit(code: str, entry: str, told: str) -> None:
    (line,) = [each for each in PAGES[f"grid-{code}.md"].splitlines() if each.startswith(f"| `{entry}` |")]
    assert told.replace("> 30", "\\> 30") in line
