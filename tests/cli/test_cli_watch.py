"""`sld watch` for the paper that a drawing is printed on, as `sld draw --for-print`."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from sld.cli.app import app
from sld.cli.watching.latest import Latest, Options

FARM = Path(__file__).parents[2] / "specs" / "hill-farm.yaml"


@pytest.mark.parametrize(("for_print", "largest"), [(None, ("594", "420")), ("A3", ("420", "297"))])
def test_the_page_has_the_sheets_for_the_paper_of_the_print(for_print: str | None, largest: tuple[str, str]) -> None:
    """The farm, with two supply points, needs A2 (594 x 420 mm); A3 is 420 x 297 mm (ISO 216)."""
    latest = Latest(FARM, Options(for_print=for_print), lambda said: None)
    assert latest.look()
    sizes = re.findall(r'<svg[^>]* width="(\d+)mm" height="(\d+)mm"', latest.page.decode())
    assert max(sizes, key=lambda size: int(size[0])) == largest


def test_two_sizes_of_the_same_sheets_are_refused() -> None:
    result = CliRunner().invoke(app, ["watch", str(FARM), "--paper", "A3", "--for-print", "A4"])
    assert result.exit_code == 2
    assert "give one of them" in result.output
