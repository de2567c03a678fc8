"""The font that a spec names for letters that the font of the sheets lacks: found like an included file, or refused."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from sld.finding import Finding, Severity, SpecPath
from sld.spec.include import find
from sld.spec.source import Source, Unusable
from sld.spec.span import UnusableText

__all__ = ["with_font"]

_AT: SpecPath = ("drawing", "font")


def with_font(source: Source, name: str, folder: Path | None, allow_outside: bool) -> Source:
    """Return the source with the font that `drawing.font` names. Raises Unusable."""
    from sld.picture.lettering import MAX_FONT_BYTES, read_font  # few specs have one
    from sld.picture.picture import BadPicture

    try:
        found = find(name, source.locate(_AT), folder, allow_outside)
        with found.open("rb") as stream:
            return replace(source, font=read_font(stream.read(MAX_FONT_BYTES + 1)))
    except UnusableText as unusable:
        code, reason, remedy = unusable.code, unusable.message, unusable.remedy
    except BadPicture as bad:
        code, reason, remedy = "SP29", f"`{name}` cannot be used as a font: {bad.reason}", bad.remedy
    except OSError as error:
        code, remedy = "SP29", "check that it may be read"
        reason = f"`{name}` cannot be read: {(error.strerror or str(error)).lower()}"
    raise Unusable(source, [Finding(code, Severity.DANGER, reason, remedy, _AT)])
