"""The font that a spec names for letters that the font of the sheets lacks."""

from __future__ import annotations

from pathlib import Path

from sld.frozen import replace
from sld.spec.named_file import Use, read_named
from sld.spec.source import Source

__all__ = ["with_font"]


def with_font(source: Source, name: str, folder: Path | None, allow_outside: bool) -> Source:
    """Return the source with the font that `drawing.font` names. Raises Unusable."""
    from sld.picture.lettering import MAX_FONT_BYTES, read_font  # few specs have one

    use = Use(("drawing", "font"), "font", "SP29", MAX_FONT_BYTES)
    return replace(source, font=read_named(source, name, folder, allow_outside, use, read_font))
