"""A spec that was read, rated and reviewed, for whoever asks from Python."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Literal, get_args

from sld import run
from sld.finding import Finding, Severity
from sld.quantity import LetterSymbol, Rating
from sld.ratings.symbol import Symbol
from sld.steps.unanswered import Unanswered

if TYPE_CHECKING:
    from sld.door.document import Document
    from sld.spec.span import Span

__all__ = ["Design", "Paper", "Reader"]

Paper = Literal["A4", "A3", "A2", "A1", "A0"]
Reader = Literal["full", "operator", "crew"]

_NEAREST_COUNT = 3


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Design:
    """One photovoltaic system with its ratings and with what was found; made by `sld.load`.

    checked: the system and its ratings as the stages of `sld.run` hand them on. path: of the file, None without one.
    In a notebook it shows sheet 1 of its drawing.
    """

    checked: run.Checked
    path: Path | None = None

    def __repr__(self) -> str:
        from sld.spec.quote import counted

        source = self.checked.source.path
        return f"<Design {source}: {len(self.checked.devices)} devices, {counted(self.findings)}>"

    def _repr_svg_(self) -> str:
        return self.draw()._repr_svg_()

    def _repr_html_(self) -> str:
        return self.draw()._repr_html_()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Return what was found, assumptions and accepted findings too; `str(finding.message)` is its text."""
        return self.checked.findings

    @property
    def worst(self) -> Severity | None:
        """Return the worst severity that is not accepted, None where nothing was found."""
        return self.checked.worst()

    def place(self, finding: Finding) -> Span:
        """Return where in the spec a finding is; printed, `file:line:column`."""
        return self.checked.source.locate(finding.at, finding.on_key)

    def quoted(self, *findings: Finding) -> str:
        """Return findings, all without any, as `sld check` prints them: place, line of the spec, and what to do."""
        from sld.spec.quote import quote

        return "\n\n".join(quote(self.checked.source, each) for each in findings or self.findings)

    @property
    def designations(self) -> tuple[str, ...]:
        """Return the reference designation of every device, in the order of the tree from the network down."""
        return tuple(dict.fromkeys(self._keys()))

    def designation(self, finding: Finding) -> str:
        """Return the reference designation of the device that a finding is about, empty for the whole system."""
        device = self.checked.devices.get(finding.device)
        return device.designation if device else ""

    def ratings(self, device: str = "") -> tuple[Rating, ...]:
        """Return all ratings of a device, of the whole system without one.

        device: its reference designation, `-TB1-WD1`, or its key (`Finding.device`). With several supply points that of
        the network, `-GA2`, stands for the whole behind it. Raises LookupError with the nearest designations for one
        that is not there.
        """
        part, key = self._found(device)
        return part.ratings.of(key)

    def rating(self, device: str, symbol: str | Symbol) -> Rating:
        """Return one rating, with unit, formula, inputs and clause.

        device: as for `ratings`. symbol: as it is printed, `Iz`, or the constant where two are printed alike. Raises
        LookupError with the nearest designations or symbols, or with the reason why there is no such rating.
        """
        part, key = self._found(device)
        values = part.ratings.by_symbol(key)
        found = _named(dict(values), symbol)
        if len(found) == 1:
            return values[found[0]]
        of = f"of {device or 'the whole system'}"
        if found:
            alike = " or ".join(f"Symbol.{each.name} ({each.meaning})" for each in found)
            raise LookupError(f"{symbol} {of} is printed for two quantities: ask for {alike}")
        why: dict[LetterSymbol, Rating | Unanswered] = dict(part.ratings.missing_of(key))
        for missing in _named(why, symbol):
            raise LookupError(f"there is no {missing} {of}: {why[missing]}")
        known = list(dict.fromkeys(str(each) for each in values))
        raise LookupError(f"there is no rating {symbol} {of}; {_nearest(str(symbol), known)}")

    def draw(
        self, *, paper: Paper | None = None, reader: Reader | None = None, for_print: Paper | None = None
    ) -> Document:
        """Lay out the single-line diagram and put it on sheets.

        paper: another size than the spec asks for; a larger one is taken where the diagram needs it. reader: for whom,
        instead of for whom the spec says. for_print: the size it will be printed on; it is laid out for that, on more
        sheets, and letters stay legible. Raises ValueError for a word that is neither, and for both papers.
        """
        _one_of("for_print", for_print, get_args(Paper))
        if paper and for_print:
            raise ValueError("paper and for_print are two sizes of the same sheets: give one of them")
        if for_print:
            printed = replace(self, checked=run.for_print(self.checked, for_print))
            return printed._made(("drawing",), None, reader)["drawing"]
        return self._made(("drawing",), paper, reader)["drawing"]

    def documents(self, *names: str, reader: Reader | None = None) -> dict[str, Document]:
        """Return documents by name: `drawing`, `calculation`; all that are made for the reader without names.

        reader: for whom, instead of for whom the spec says. Raises ValueError for another reader, and for a document
        that is not made for that one.
        """
        return self._made(names, None, reader)

    def _made(self, names: tuple[str, ...], paper: Paper | None, reader: Reader | None) -> dict[str, Document]:
        """Return documents by name, all that are made for the reader without names. Raises ValueError."""
        from sld.door.document import Document

        _one_of("paper", paper, get_args(Paper))
        _one_of("reader", reader, get_args(Reader))
        made_for = run.made_for(reader or self.checked.drawing.reader)
        for name in names:
            _one_of("a document for this reader", name, made_for)
        made = run.documents(self.checked, names or made_for, paper=paper, reader=reader)
        return {name: Document(self, name, composition, reader) for name, composition in made.items()}

    def key(self, device: str) -> str:
        """Return the key of a device by its designation, `-TB1-WD1`, its key, or a name that only one has.

        Raises LookupError with the nearest designations for one that is not there.
        """
        devices = self.checked.devices
        if not device or device in devices or any(device in part.ratings.values for part in self.checked.parts):
            return device
        keys = self._keys()
        if device in keys:
            return keys[device]
        named = [key for key, each in devices.items() if device in (each.name, key.rpartition(".")[2])]
        if len(named) > 1:
            alike = ", ".join(devices[each].designation for each in named[:_NEAREST_COUNT])
            raise LookupError(f"{len(named)} devices are called {device}: {alike}{', ...' if len(named) > 3 else ''}")
        if not named:
            raise LookupError(f"there is no device {device}; {_nearest(device, keys)}")
        return named[0]

    def part(self, key: str) -> run.Part:
        """Return what stands behind the same supply point as a device, or a data cable or earth conductor of it.

        key: its key. Raises LookupError for the empty one where there are several supply points.
        """
        parts = self.checked.parts
        if not key and len(parts) > 1:
            supplies = ", ".join(part.system.devices[part.system.root].designation for part in parts)
            raise LookupError(f"there are {len(parts)} supply points; ask for what is behind one of {supplies}")
        return next((part for part in parts if key in part.system.devices or key in part.ratings.values), parts[0])

    def _found(self, device: str) -> tuple[run.Part, str]:
        """Return the part that a device belongs to, and its key there: of the network, that of the whole part."""
        key = self.key(device)
        part = self.part(key)
        return part, "" if key == self.checked.whole(part) else key

    def _keys(self) -> dict[str, str]:
        """Return the keys of all that has a reference designation by it; of devices drawn once, by that of each."""
        from sld.layout.diagram.ranges import members

        found: dict[str, str] = {}
        for system in (part.system for part in self.checked.parts):
            found |= {each.designation: each.key for each in system.devices.values()}
            found |= {name: each.key for each in system.devices.values() for name in members(each.designation)}
            found |= {each.designation: each.key for each in system.chains}
            found |= {each.designation: each.key for each in system.earth_conductors}
        return found


def _one_of(what: str, word: str | None, known: tuple[str, ...]) -> None:
    """Let pass what is known, and None. Raises ValueError."""
    if word is not None and word not in known:
        raise ValueError(f"{what} is one of {', '.join(known)}, not {word!r}")


def _named(values: Mapping[LetterSymbol, Rating | Unanswered], symbol: str | Symbol) -> list[LetterSymbol]:
    """Return the symbols that a caller may mean: those printed so, else those whose rating is."""
    if isinstance(symbol, Symbol):
        return [each for each in values if each is symbol]
    found = [each for each in values if str(each) == symbol]
    return found or [each for each, of in values.items() if isinstance(of, Rating) and str(of.symbol) == symbol]


def _nearest(asked: str, known: Iterable[str]) -> str:
    """Return the words that name the nearest of some names, or the first of them. Capitals do not count."""
    names = list(known)
    by_fold = {each.casefold(): each for each in names}
    close = [by_fold[each] for each in get_close_matches(asked.casefold(), list(by_fold), _NEAREST_COUNT, 0.5)]
    if close:
        return f"the nearest: {', '.join(close)}"
    return f"there are {', '.join(names[:20])}{', ...' if len(names) > 20 else ''}" if names else "there is none"
