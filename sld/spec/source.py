"""A spec file as data that knows where each value stands.

`read` and `read_text` return a `Source` or raise `Unusable`, which carries located findings and never a trace of the
parser. JSON is read in the same way, as YAML includes it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from sld.finding import Finding, Severity, SpecPath
from sld.frozen import dataclass, replace
from sld.grid.country import Country
from sld.picture.lettering import Letters
from sld.picture.picture import Picture
from sld.spec import codes  # noqa: F401 - fills the registry with the codes used below
from sld.spec.include import include
from sld.spec.span import Span, Spot, UnusableText, split_lines
from sld.spec.text import MAX_BYTES, compose_block, decode, load

__all__ = ["Source", "Span", "Unusable", "is_pinned", "read", "read_text", "unusable_file"]


@dataclass(frozen=True, slots=True)
class Source:
    """The text of a spec with everything it includes.

    path: the name that is printed. data: plain data (dict, list, str, int, float, bool, None). spots: where each value
    stands. texts: the text of each file by its printed name; the first is the spec itself. logo: the picture that it
    names, once that was read, font likewise. grid_rules: those of its country with what a file of its own replaces,
    where it has one.
    """

    path: str
    text: str
    data: dict[str, Any]
    spots: Mapping[SpecPath, Spot]
    texts: Mapping[str, str]
    logo: Picture | None = None
    font: Letters | None = None
    grid_rules: Country | None = None

    def locate(self, path: SpecPath, on_key: bool = False) -> Span:
        """Return the place of a value (or of its key); for one that is not written, of the nearest block around it."""
        for length in range(len(path), 0, -1):
            spot = self.spots.get(path[:length])
            if spot is not None:
                return spot.span(on_key or length < len(path))
        return Span(self.path, 1, 1)

    def files(self) -> tuple[Path, ...]:
        """Return the files that it was read from: the spec, its types files, its logo, its font."""
        named = (("project", "logo", self.logo), ("drawing", "font", self.font))
        own = [self.data[block][key] for block, key, read in named if read is not None]
        return tuple(Path(name) for name in self.texts) + tuple(Path(self.path).parent / name for name in own)

    def lines(self, file: str) -> tuple[str, ...]:
        """Return the lines of one of the files, none for a file that could not be read."""
        return split_lines(self.texts.get(file, ""))


class Unusable(Exception):  # noqa: N818 - the fault of the input, not of the program
    """The input cannot be used: why (`findings`), and the text for quoting (`source`)."""

    def __init__(self, source: Source, findings: Iterable[Finding]) -> None:
        self.source = source
        self.findings = tuple(findings)
        super().__init__("; ".join(f"{source.locate(each.at)}: {each.code} {each.message}" for each in self.findings))

    def __reduce__(self) -> tuple[type[Unusable], tuple[Source, tuple[Finding, ...]]]:
        """Say how to make it again in another process, where exceptions arrive as bytes."""
        return type(self), (self.source, self.findings)

    def place(self, finding: Finding) -> Span:
        """Return where a finding is; printed, `file:line:column`."""
        return self.source.locate(finding.at, finding.on_key)

    def quoted(self) -> str:
        """Return the findings as `sld check` prints them: place, line of the text, and what to do."""
        from sld.spec.quote import quote  # which needs this module

        return "\n\n".join(quote(self.source, each) for each in self.findings)


def _pin(span: Span) -> SpecPath:
    """Return the path under which a place is kept that belongs to no value, such as a bracket that is not closed."""
    return (f"@{span}+{span.width}",)


def is_pinned(path: SpecPath) -> bool:
    """Tell whether a path stands for a place in the text and not for a value."""
    return bool(path) and str(path[0]).startswith("@")


def unusable_file(source: Source, unusable: UnusableText, text: str) -> Unusable:
    """Return the exception for a file that a spec names, with its text for quoting. text: of that file."""
    pin = _pin(unusable.span)
    spots = {**source.spots, pin: Spot(None, unusable.span)}
    texts = {**source.texts, unusable.span.file: text}
    finding = Finding(unusable.code, Severity.DANGER, unusable.message, unusable.remedy, pin)
    return Unusable(replace(source, spots=spots, texts=texts), [finding])


def _unusable(unusable: UnusableText, path: str, texts: Mapping[str, str]) -> Unusable:
    """Return the exception for a unusable, with the places it names pinned in the source that it carries."""
    spans = [unusable.span, *(span for span, _ in unusable.also)]
    spots = {_pin(span): Spot(None, span) for span in spans}
    finding = Finding(
        unusable.code,
        Severity.DANGER,
        unusable.message,
        unusable.remedy,
        _pin(unusable.span),
        also=tuple((_pin(span), word) for span, word in unusable.also),
    )
    return Unusable(Source(path, texts.get(path, ""), {}, spots, texts), [finding])


def read_text(text: str | bytes, name: str = "-", folder: Path | None = None, *, allow_outside: bool = False) -> Source:
    """Read a spec from text. folder: what included files are relative to; without it there can be none.

    Raises Unusable.
    """
    texts: dict[str, str] = {name: "" if isinstance(text, bytes) else text}
    try:
        texts[name] = decode(text, name)
        data, spots = compose_block(texts[name], name)
        include(data, spots, texts, name, folder, allow_outside)
    except UnusableText as unusable:
        if isinstance(text, bytes):  # quoted as far as it is text
            texts[name] = texts[name] or text[:MAX_BYTES].decode("utf-8", errors="replace").removeprefix("\ufeff")
        raise _unusable(unusable, name, texts) from None
    return Source(name, texts[name], data, spots, texts)


def read(path: Path, *, allow_outside: bool = False) -> Source:
    """Read a spec file and the types files it includes. Raises Unusable."""
    shown = str(path)
    try:
        raw = load(path, shown)
    except UnusableText as unusable:
        raise _unusable(unusable, shown, {}) from None
    return read_text(raw, shown, path.parent, allow_outside=allow_outside)
