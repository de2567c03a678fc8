"""The tour: one spec file to its sheets, every stage one line, in order. Read this first.

    text --spec--> Spec --model--> System --rate--> Ratings --rules--> findings
    System + Ratings + findings --documents--> Documents (--layout--> Plan) --sheet--> sheets, rows --render--> files

Each stage takes the frozen values of the stages before it and returns a new one. Only `Unusable` stops the way early:
input that cannot be used. Findings never stop the drawing; it is made, flagged and marked with the count.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from sld import spec
from sld.finding import Finding, Severity
from sld.frozen import dataclass, replace
from sld.readers import PURPOSES, READERS

if TYPE_CHECKING:
    from sld.model.device import Device
    from sld.model.system import System
    from sld.pack.pack import Made, Pack
    from sld.rows import Rows
    from sld.sheet.compose import Composition
    from sld.sheet.sheet import About, Sheet
    from sld.spec.blocks.project import Drawing, Project
    from sld.spec.document import Spec
    from sld.spec.source import Source
    from sld.steps import Ratings
    from sld.webpage.page import Live

__all__ = [
    "DOCUMENTS",
    "FORMATS",
    "Checked",
    "Part",
    "check",
    "check_mapping",
    "check_text",
    "documents",
    "draw",
    "files",
    "for_print",
    "made_for",
    "name_of",
    "pack",
    "pack_files",
    "reviewed",
    "webpage",
]

FORMATS = ("svg", "pdf", "png", "html", "dxf", "strokes", "csv")
"""What a document can be written as.

`html` is one page for a browser, with all sheets, findings and ratings, `strokes` lists every stroke, one a line, `csv`
is a file for each table.
"""

DOCUMENTS = tuple(dict.fromkeys(name for reader in READERS.values() for name in reader.documents))
"""The documents there are, by name."""


class Part(NamedTuple):
    """What stands behind one supply point, with its ratings and what is told of it."""

    system: System
    ratings: Ratings
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Checked:
    """A spec that was read, resolved, rated and reviewed: what stands behind each supply point, and all findings."""

    source: Source
    parts: tuple[Part, ...]
    findings: tuple[Finding, ...]

    @property
    def system(self) -> System:
        """Return the system of a spec that has one supply point. Raises ValueError for others."""
        (part,) = self.parts
        return part.system

    @property
    def ratings(self) -> Ratings:
        """Return the ratings of a spec that has one supply point. Raises ValueError for others."""
        (part,) = self.parts
        return part.ratings

    @property
    def devices(self) -> Mapping[str, Device]:
        """Return the devices of all parts by their keys."""
        return {key: device for part in self.parts for key, device in part.system.devices.items()}

    def whole(self, part: Part) -> str:
        """Return the key that stands for the whole of a part: empty where there is one, else that of its supply."""
        return part.system.root if len(self.parts) > 1 else ""

    @property
    def project(self) -> Project:
        """Return what the spec says of the project."""
        return self.parts[0].system.project

    @property
    def drawing(self) -> Drawing:
        """Return the options of the drawing."""
        return self.parts[0].system.drawing

    def worst(self) -> Severity | None:
        """Return the worst severity that is not accepted, None without findings."""
        return max((each.severity for each in self.findings if each.accepted is None), default=None)


def check(path: Path, *, allow_outside: bool = False) -> Checked:
    """Read, resolve, rate and review one spec. allow_outside: types files from anywhere. Raises Unusable."""
    return reviewed(*spec.load(path, allow_outside=allow_outside))


def check_text(text: str | bytes) -> Checked:
    """Read, resolve, rate and review a spec that is a text, not a file. Raises Unusable."""
    return reviewed(*spec.load_text(text))


def check_mapping(mapping: Mapping[str, Any]) -> Checked:
    """Read, resolve, rate and review a spec that is a mapping of Python. Raises Unusable."""
    return reviewed(*spec.load_mapping(mapping))


def reviewed(source: Source, parsed: Spec) -> Checked:
    """Resolve, rate and review a spec that was read."""
    from sld import model  # all formulas and rules, which a run that finds nothing changed does without
    from sld.rules import in_order, review_all
    from sld.steps import rate

    systems = model.systems(parsed, source.grid_rules)
    ratings = tuple(rate(system) for system in systems)
    findings = review_all(tuple(zip(systems, ratings, strict=True)))
    parts = tuple(map(Part, systems, ratings, findings))
    found = findings[0] if len(findings) == 1 else sorted((each for part in findings for each in part), key=in_order)
    return Checked(source, parts, tuple(found))


def draw(checked: Checked, *, paper: str | None = None, reader: str | None = None) -> Composition:
    """Lay out the diagram of a checked spec and put it on sheets.

    paper, reader: another size, and for another reader, than the spec asks for.
    """
    return documents(checked, ("drawing",), paper=paper, reader=reader)["drawing"]


def for_print(checked: Checked, paper: str) -> Checked:
    """Return a checked spec whose drawing is laid out for the paper it is printed on, on as many sheets as it takes.

    Letters then need no reduction, and keep the 2.5 mm of ISO 3098 (from memory) on paper.
    """

    def asked(part: Part) -> Part:
        drawing = part.system.drawing.model_copy(update={"paper": paper, "largest_paper": paper})
        return part._replace(system=replace(part.system, drawing=drawing))

    return replace(checked, parts=tuple(map(asked, checked.parts)))


def documents(
    checked: Checked, names: Iterable[str], *, paper: str | None = None, reader: str | None = None
) -> dict[str, Composition]:
    """Put documents of a checked spec on sheets, by name as in `sld.documents.registry`.

    paper: of the drawing, another size than the spec asks for. reader: for another reader than the spec asks for.
    Raises KeyError for a name that there is no document of.
    """
    made = _made(checked, tuple(names), paper=paper, reader=reader)
    return {name: each.composition for name, each in made.items()}


def _made(
    checked: Checked, names: Sequence[str], *, paper: str | None, reader: str | None, bound: bool = False
) -> dict[str, Made]:
    """Make documents and put them on sheets. bound: the drawing leaves out what others of them have."""
    from sld import layout, sheet  # fonts and symbols are not needed to check
    from sld.documents.joined import joined
    from sld.documents.registry import KINDS, without_own
    from sld.model.wording import supply_words
    from sld.pack.pack import Made

    parts, logo, font = checked.parts, checked.source.logo, checked.source.font
    if reader:
        asked = parts[0].system.drawing.model_copy(update={"reader": reader})
        parts = tuple(part._replace(system=replace(part.system, drawing=asked)) for part in parts)
    flags = layout.numbered_in_parts([(part.system, part.findings) for part in parts])
    told = list(zip(parts, flags, strict=True))
    made: dict[str, Made] = {}
    for name in names:
        kind = KINDS[name]
        of_parts = [(p.system, kind.make(p.system, p.ratings, checked.findings, own)) for p, own in told]
        document = joined([(supply_words(system), each) for system, each in of_parts], kind.sections)
        if bound:
            document = without_own(document, names)
        if kind.diagram:
            drawn = tuple(
                (layout.diagram_of(part.system, part.ratings, layout.by_device(own, part.system.root)), part.system)
                for part, own in told
            )
            composed = sheet.sheets(document, layout.Drawable(drawn), paper, logo)
        else:
            composed = sheet.pages(document, logo)
        made[name] = Made(document, sheet.lettered(composed, font))
    return made


def pack(checked: Checked, purpose: str, *, paper: str | None = None) -> Pack:
    """Bind the documents for a purpose: before them a cover with their pages, behind them what is asked for.

    purpose: a key of `PURPOSES`. paper: of the drawing, another size than the spec asks for.
    """
    from sld import sheet
    from sld.documents.completeness.document import completeness
    from sld.documents.cover.document import cover
    from sld.pack import pack as packing

    system, of, logo, font = checked.parts[0].system, PURPOSES[purpose], checked.source.logo, checked.source.font
    made = _made(checked, of.documents, paper=paper, reader=of.reader, bound=True)
    before_count = 0
    front: Made | None = None
    while front is None or len(front.composition.sheets) != before_count:  # the pages depend on how many it takes
        before_count = len(front.composition.sheets) if front else 1
        whole = dict(made)
        if of.askers:
            last = completeness(system, checked.findings, of.askers, packing.contents(made, before_count))
            whole["completeness"] = packing.Made(last, sheet.lettered(sheet.pages(last, logo), font))
        contents = packing.contents(whole, before_count)
        first = cover([part.system for part in checked.parts], checked.findings, of.title, contents)
        front = packing.Made(first, sheet.lettered(sheet.pages(first, logo), font))
    return packing.packed(system, purpose, {"cover": front, **whole}, contents)


def pack_files(checked: Checked, packed: Pack, name: str, *, xlsx: bool = True) -> dict[str, bytes]:
    """Return the files of a pack by file name. name: they begin with it, but for the manifest. xlsx: with one.

    Raises MissingLibrary where cairo is not installed, or openpyxl for the XLSX, and OSError where what was read is no
    more there.
    """
    from sld import render
    from sld.pack.manifest import MANIFEST_NAME, manifest
    from sld.pack.pack import csv_files

    bound = packed.bound
    found = {f"{name}.pdf": render.pdf(bound.sheets, bound.about, bound.chapters)}
    found |= csv_files(packed.tables, name)
    if xlsx:
        found[f"{name}.xlsx"] = render.xlsx(packed.tables)
    read = {path.name: path.read_bytes() for path in checked.source.files()}
    parts = [(part.system, part.ratings) for part in checked.parts]
    told = manifest(packed, parts, checked.findings, found, read)
    return {**found, MANIFEST_NAME: told}


def webpage(checked: Checked, sheets: tuple[Sheet, ...], *, live: Live | None = None) -> bytes:
    """Return a document as one page for a browser, with its sheets, the findings, and how each rating came about.

    live: for the page of a running program that follows the spec's file; it shows the lines of the spec too.
    """
    from sld.spec.quote import quote
    from sld.webpage.page import page

    def place(finding: Finding) -> str:
        return quote(checked.source, finding) if live else ""

    systems = [(part.system, part.ratings) for part in checked.parts]
    return page(sheets, systems, checked.findings, place, live)


def name_of(path: Path, reader: str | None, document: str = "drawing") -> str:
    """Return the name of the files of a document: those of one spec for two readers have different ones.

    path: of the spec's file. reader: the one asked for, None where the spec says it.
    """
    of_reader = f"{path.stem}-{reader}" if reader in ("operator", "crew") else path.stem
    return of_reader if document == "drawing" else f"{of_reader}-{document}"


def made_for(reader: str) -> tuple[str, ...]:
    """Return the names of the documents that are made for a reader."""
    return READERS[reader].documents


def files(
    sheets: tuple[Sheet, ...], name: str, formats: tuple[str, ...], *, png_dpi: float = 110, about: About | None = None,
    tables: Sequence[Rows] = (),
) -> dict[str, bytes]:  # fmt: skip
    """Return the files of a document by file name.

    formats: of those but `html`, which `webpage` makes. png_dpi: dots per inch of a PNG. about: metadata of PDF and
    DXF. tables: written as CSV, each to a file of its own.

    Raises MissingLibrary for a PDF or PNG on a machine without cairo, for a DXF on one without ezdxf, for
    Hebrew and Arabic text on one without what orders it; UnknownLetters for letters that the font lacks.
    """
    from sld import render
    from sld.rows import csv
    from sld.sheet.sheet import NOTHING_TOLD

    render.readable(sheets)
    found: dict[str, bytes] = {}
    characters = render.letters(sheets) if "svg" in formats else ""
    for each in sheets:
        stem = name if each.number == 1 else f"{name}-{each.number}"
        if "svg" in formats:
            found[f"{stem}.svg"] = render.svg(each, characters)
        if "strokes" in formats:
            found[f"{stem}.strokes"] = render.text(each).encode()
        if "png" in formats:
            found[f"{stem}.png"] = render.png(each, png_dpi)
        if "dxf" in formats:
            found[f"{stem}.dxf"] = render.dxf(each, about or NOTHING_TOLD)
    if "pdf" in formats:
        found[f"{name}.pdf"] = render.pdf(sheets, about or NOTHING_TOLD)
    if "csv" in formats:
        found |= {f"{name}-{each.name}.csv": csv(each) for each in tables}
    return found
