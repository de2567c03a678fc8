"""The logo that a spec names: found like an included file, read into dots, or refused at its place."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from sld.finding import Finding, Severity, SpecPath
from sld.spec.include import find
from sld.spec.source import Source, Unusable
from sld.spec.span import UnusableText

__all__ = ["with_logo"]

_AT: SpecPath = ("project", "logo")


def with_logo(source: Source, name: str, folder: Path | None, allow_outside: bool) -> Source:
    """Return the source with the picture that `project.logo` names. Raises Unusable."""
    from sld import picture  # few specs have one

    try:
        found = find(name, source.locate(_AT), folder, allow_outside)
        with found.open("rb") as stream:
            return replace(source, logo=picture.read(stream.read(picture.MAX_BYTES + 1)))
    except UnusableText as unusable:
        code, reason, remedy = unusable.code, unusable.message, unusable.remedy
    except picture.BadPicture as bad:
        code, reason, remedy = "SP26", f"`{name}` cannot be used as a logo: {bad.reason}", bad.remedy
    except OSError as error:
        code, remedy = "SP26", "check that it may be read"
        reason = f"`{name}` cannot be read: {(error.strerror or str(error)).lower()}"
    raise Unusable(source, [Finding(code, Severity.DANGER, reason, remedy, _AT)])
