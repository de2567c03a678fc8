"""A document of a design, such as its drawing: sheets to look at and to keep."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING

from sld import files, render, run
from sld.rows import Rows
from sld.sheet.compose import Composition
from sld.sheet.sheet import Sheet

if TYPE_CHECKING:
    from sld.door.design import Design

__all__ = ["Document", "Saved"]

_NO_FILE = Path("a spec without a file")
"""What the record of a folder says of a drawing whose spec is a text or a mapping."""

_LEAST_DPI, _MOST_DPI = 36, 300


@dataclass(frozen=True, slots=True)
class Saved:
    """What `Document.save` did. files: written. remarks: what else was done in the folder, a line each."""

    files: tuple[Path, ...]
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Document:
    """The finished sheets of a design; made by `Design.draw` and `Design.documents`. In a notebook it shows sheet 1.

    name: which document it is. composition: the sheets as `sld.run` hands them on. reader: for whom it was asked for,
    None as the spec says.
    """

    design: Design
    name: str
    composition: Composition
    reader: str | None = None

    def __repr__(self) -> str:
        return f"<Document {self.name} of {self.design.checked.source.path}: {self.note}>"

    def _repr_svg_(self) -> str:
        return self.svg()

    def _repr_html_(self) -> str:
        """Return sheet 1 as a picture: names and styles within an SVG then stay apart from those of the page."""
        data = b64encode(self.svg().encode()).decode("ascii")
        title = escape(self.sheets[0].title)
        return f'<img src="data:image/svg+xml;base64,{data}" alt="{title}" style="max-width: 100%">'

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """Return the sheets: strokes in millimetres of the page."""
        return self.composition.sheets

    @property
    def tables(self) -> tuple[Rows, ...]:
        """Return its tables: name, headings and cells, in the words of the document."""
        return self.composition.tables

    @property
    def paper(self) -> str:
        """Return the size of sheet 1, `A3`."""
        return self.composition.paper

    @property
    def note(self) -> str:
        """Return which paper was taken, and why."""
        return str(self.composition.note)

    @property
    def lacking(self) -> str:
        """Return the characters that the font of the sheets has no sign for; with any of them it is not saved."""
        return render.lacking(self.sheets)

    def svg(self, sheet: int = 1) -> str:
        """Return one sheet as an SVG document. sheet: from 1. Raises LookupError for one that is not there."""
        return render.svg(self._sheet(sheet), render.letters(self.sheets)).decode()

    def png(self, sheet: int = 1, *, dpi: int = 110) -> bytes:
        """Return one sheet as a PNG. sheet: from 1. dpi: dots per inch, 36 to 300.

        Raises LookupError for a sheet that is not there, ValueError for other dots, MissingLibrary without cairo.
        """
        return render.png(self._sheet(sheet), _dots(dpi))

    def pdf(self) -> bytes:
        """Return all sheets as one PDF. Raises MissingLibrary on a machine without cairo."""
        return render.pdf(self.sheets, self.composition.about)

    def html(self) -> str:
        """Return all sheets as one page for a browser, with the findings and how each rating came about."""
        return run.webpage(self.design.checked, self.sheets).decode()

    def save(
        self,
        folder: str | PathLike[str] = ".",
        formats: str | Sequence[str] = ("svg", "pdf"),
        *,
        name: str | None = None,
        dpi: int = 110,
        overwrite: bool = False,
    ) -> Saved:
        """Write the document into a folder, all of it or nothing, over no file that is not its own.

        folder: made where it is not there. formats: of svg, pdf, png, html, dxf, strokes, csv. name: of the files,
        instead of that of the spec's file; documents other than the drawing add theirs. dpi: of PNGs. overwrite:
        replace files of others too, never one that was read.

        Raises Refused, with the files that would be replaced; MissingLibrary; OSError; ValueError for another format or
        name, for letters that the font lacks, and where a spec that is no file is given no name.
        """
        asked = (formats,) if isinstance(formats, str) else tuple(dict.fromkeys(formats))
        unknown = [each for each in asked if each not in run.FORMATS]
        if unknown or not asked:
            raise ValueError(f"formats are of {', '.join(run.FORMATS)}, not {', '.join(unknown) or 'nothing'}")
        place, spec, stem = Path(folder), self.design.path or _NO_FILE, self._name(name)
        told = self.composition
        made = run.files(self.sheets, stem, asked, png_dpi=_dots(dpi), about=told.about, tables=told.tables)
        if "html" in asked:
            made[f"{stem}.html"] = self.html().encode()
        if self.design.path is not None:
            drawing = files.drawing_of(spec, stem, place)
            read = (spec, *self.design.checked.source.files())
        else:
            drawing, read = files.Drawing(stem, str(spec)), ()
        remarks = files.put(place, drawing, made, files.identities(read), overwrite=overwrite)
        return Saved(tuple(place / each for each in made), tuple(remarks))

    def _name(self, name: str | None) -> str:
        """Return the name of the files. Raises ValueError."""
        if name is None:
            if self.design.path is None:
                raise ValueError(f"a spec that is no file gives its {self.name} no name: save(folder, name='roof')")
            return run.name_of(self.design.path, self.reader, self.name)
        if name in ("", "..") or name != Path(name).name or "\\" in name or "\0" in name:
            raise ValueError(f"a name of files has letters and no folder in it, not {name!r}")
        return run.name_of(Path(f"{name}.yaml"), None, self.name)

    def _sheet(self, number: int) -> Sheet:
        """Return the sheet with a number. Raises LookupError."""
        for sheet in self.sheets:
            if sheet.number == number:
                return sheet
        raise LookupError(f"there is no sheet {number}; the document has sheets 1 to {len(self.sheets)}")


def _dots(dpi: int) -> int:
    if not _LEAST_DPI <= dpi <= _MOST_DPI:
        raise ValueError(f"dots per inch are {_LEAST_DPI} to {_MOST_DPI}, not {dpi}")
    return dpi
