"""The logo that a spec names, read into dots."""

from __future__ import annotations

from pathlib import Path

from sld.frozen import replace
from sld.spec.named_file import Use, read_named
from sld.spec.source import Source

__all__ = ["with_logo"]


def with_logo(source: Source, name: str, folder: Path | None, allow_outside: bool) -> Source:
    """Return the source with the picture that `project.logo` names. Raises Unusable."""
    from sld import picture  # few specs have one

    use = Use(("project", "logo"), "logo", "SP26", picture.MAX_BYTES)
    return replace(source, logo=read_named(source, name, folder, allow_outside, use, picture.read))
