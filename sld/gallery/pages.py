"""All files of the gallery by name: the one list that the command and the test share."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from sld.gallery.commands import commands_page
from sld.gallery.drawings import drawings
from sld.gallery.findings_form import findings_form, schema_text
from sld.gallery.grid import grid_pages
from sld.gallery.index import index
from sld.gallery.rules import rules
from sld.gallery.spec_reference import spec_reference
from sld.gallery.symbols import SHEETS, symbols_page, symbols_sheet
from sld.gallery.tables import tables
from sld.report.schema import SCHEMA_NAME

__all__ = ["HAND_WRITTEN", "ROOT", "pages", "strangers"]

ROOT = Path(__file__).resolve().parents[2]
"""The folder of the repository."""

HAND_WRITTEN = ("changes.md", "guide.md", "python.md")


def pages(specs: Path) -> dict[str, bytes]:
    """Return the content of every generated file by its name. Raises Unusable for a spec, MissingCairo for a PNG."""
    from sld.render import svg
    from sld.symbols.catalogue import family

    drawn = drawings(sorted(specs.glob("*.yaml")))
    made = {name: content for each in drawn for name, content in each.files.items()}
    made |= {picture: svg(symbols_sheet(family(name))) for name, picture in SHEETS.items()}
    texts = {
        "README.md": index(drawn),
        "spec-reference.md": spec_reference(specs),
        "commands.md": commands_page(),
        "rules.md": rules(),
        "findings.md": findings_form(),
        SCHEMA_NAME: schema_text(),
        "tables.md": tables(),
        "symbols.md": symbols_page(),
        **grid_pages(),
    }
    return made | {name: text.encode() for name, text in texts.items()}


def strangers(folder: Path, made: Iterable[str]) -> list[str]:
    """Return the names of files in a folder that are neither made nor hand-written, in alphabetical order."""
    known = {*made, *HAND_WRITTEN}
    return sorted(path.name for path in folder.iterdir() if path.is_file() and path.name not in known)
