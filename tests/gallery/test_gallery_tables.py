"""Every table file stands on the page with its own source and number of rows, counted here from the file itself."""

from __future__ import annotations

from pathlib import Path

import pytest

from sld.gallery.pages import ROOT
from sld.gallery.tables import tables

PAGE = tables()
FILES = sorted((ROOT / "sld" / "tables").glob("*.csv"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_table_is_on_the_page(path: Path) -> None:
    lines = [line for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    rows_count = sum(not line.startswith("#") for line in lines) - 1
    section = PAGE.split(f"[{path.name}](../sld/tables/{path.name})")[1].split("\n## ")[0]
    assert f"| Rows | {rows_count} |" in section
    for key in ("Unit", "Source", "Edition", "Status"):
        assert f"| {key} | " in section
