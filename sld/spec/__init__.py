"""Text -> typed spec: read with positions, validated block by block, names checked. Everything told is located."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sld.spec.source import Source, Unusable, read, read_text

if TYPE_CHECKING:
    from sld.spec.document import Spec

__all__ = ["Source", "Unusable", "load", "load_mapping", "load_text"]


def load(path: Path, *, allow_outside: bool = False) -> tuple[Source, Spec]:
    """Read one spec file and return its text with positions and the typed spec. Raises Unusable, with every mistake."""
    return _typed(read(path, allow_outside=allow_outside), path.parent, allow_outside)


def load_text(text: str | bytes) -> tuple[Source, Spec]:
    """Read one spec from text, which can name no other file. Raises Unusable, with every mistake."""
    return _typed(read_text(text, "<text>"), None)


def load_mapping(mapping: Mapping[str, Any]) -> tuple[Source, Spec]:
    """Read one spec from its keys and values, which can name no file. Raises Unusable, with every mistake."""
    from sld.spec.mapping import read_mapping

    return _typed(read_mapping(mapping, "<mapping>"), None)


def _typed(source: Source, folder: Path | None, allow_outside: bool = False) -> tuple[Source, Spec]:
    """Return a source with its typed spec. folder: where a logo and a font may be. Raises Unusable."""
    from sld.grid.read import GENERIC
    from sld.spec.bounded import Place, brief, first_of_each_file
    from sld.spec.complain import validate
    from sld.spec.document import Spec
    from sld.spec.doubts import refused
    from sld.spec.font import with_font
    from sld.spec.grid_rules import unknown_sets, with_grid_rules
    from sld.spec.logo import with_logo
    from sld.spec.references import dangling

    spec, mistakes = validate(Spec, source)
    if spec is None:
        raise Unusable(source, map(brief, mistakes))
    missing = [Place(each.at, partial(brief, each), each.on_key) for each in dangling(spec)]
    if missing:
        raise Unusable(source, first_of_each_file(source, missing))
    doubted = [Place(each.at, partial(brief, each)) for each in refused(spec)]
    if doubted:
        raise Unusable(source, first_of_each_file(source, doubted))
    if unknown := unknown_sets(spec):
        raise Unusable(source, unknown)
    if spec.project.logo:
        source = with_logo(source, spec.project.logo, folder, allow_outside)
    if spec.drawing.font:
        source = with_font(source, spec.drawing.font, folder, allow_outside)
    if spec.supply.grid_rules not in (None, GENERIC):
        source = with_grid_rules(source, spec.supply, folder, allow_outside)
    return source, spec
