"""A file that a spec names, a logo or a font: found like an included file and read, or refused at its place."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple, TypeVar

from sld.finding import Finding, Severity, SpecPath
from sld.spec.include import find
from sld.spec.source import Source, Unusable
from sld.spec.span import UnusableText

__all__ = ["Use", "read_named"]

T = TypeVar("T")


class Use(NamedTuple):
    """What a file is for. at: where the spec names it. code: of the finding where it cannot be that."""

    at: SpecPath
    what: str
    code: str
    most_bytes: int


def read_named(
    source: Source, name: str, folder: Path | None, allow_outside: bool, use: Use, read: Callable[[bytes], T]
) -> T:
    """Return what is read of the file of that name. read: gets one byte more of a larger file. Raises Unusable."""
    from sld.picture.picture import BadPicture  # few specs name a file

    try:
        found = find(name, source.locate(use.at), folder, allow_outside)
        with found.open("rb") as stream:
            return read(stream.read(use.most_bytes + 1))
    except UnusableText as unusable:
        code, reason, remedy = unusable.code, unusable.message, unusable.remedy
    except BadPicture as bad:
        code, reason, remedy = use.code, f"`{name}` cannot be used as a {use.what}: {bad.reason}", bad.remedy
    except OSError as error:
        code, remedy = use.code, "check that it may be read"
        reason = f"`{name}` cannot be read: {(error.strerror or str(error)).lower()}"
    raise Unusable(source, [Finding(code, Severity.DANGER, reason, remedy, use.at)])
