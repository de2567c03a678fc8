"""What changed from version to version stands in the gallery, the running version first."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import sld

ROOT = Path(__file__).parents[2]
CHANGES = (ROOT / "gallery" / "changes.md").read_text(encoding="utf-8")


def test_the_newest_version_is_the_one_of_the_package() -> None:
    versions = re.findall(r"^## (\d+\.\d+\.\d+)$", CHANGES, re.MULTILINE)
    assert versions[0] == sld.__version__
    assert versions == sorted(versions, key=lambda each: tuple(map(int, each.split("."))), reverse=True)
    assert tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"] == sld.__version__


def test_every_command_that_it_names_is_there() -> None:
    from typer.main import get_command

    from sld.cli.app import app

    known = set(get_command(app).commands)  # type: ignore[attr-defined]
    assert set(re.findall(r"`sld ([a-z]+)", CHANGES)) <= known


def test_every_page_is_reached_from_the_index_of_the_gallery() -> None:
    """The pages of single countries from that of all."""
    index = (ROOT / "gallery" / "README.md").read_text(encoding="utf-8")
    pages = {path.name for path in (ROOT / "gallery").glob("*.md")} - {"README.md"}
    linked = set(re.findall(r"\]\(([a-z-]+\.md)\)", index))
    assert {each for each in pages if not re.match(r"grid-([A-Z]{2}|generic)\.md", each)} == linked
