"""Text -> typed spec: read with positions, validated block by block, names checked. Everything told is located."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from sld.spec.source import Source, Unusable, read

if TYPE_CHECKING:
    from sld.spec.document import Spec

__all__ = ["Source", "Unusable", "load"]


def load(path: Path, *, allow_outside: bool = False) -> tuple[Source, Spec]:
    """Read one spec file and return its text with positions and the typed spec. Raises Unusable, with every mistake."""
    from sld.spec.bounded import Place, brief, first_of_each_file
    from sld.spec.complain import validate
    from sld.spec.document import Spec
    from sld.spec.logo import with_logo
    from sld.spec.references import dangling

    source = read(path, allow_outside=allow_outside)
    spec, mistakes = validate(Spec, source)
    if spec is None:
        raise Unusable(source, map(brief, mistakes))
    missing = [Place(each.at, partial(brief, each), each.on_key) for each in dangling(spec)]
    if missing:
        raise Unusable(source, first_of_each_file(source, missing))
    if spec.project.logo:
        source = with_logo(source, spec.project.logo, path.parent, allow_outside)
    return source, spec
