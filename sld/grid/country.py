"""The rules of a country: every entry of its file, typed, each with its sources."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from sld.grid.entry import AskedPaper, AskedPoint, Entry, Limit, SupplyPoint
from sld.grid.evidence import Frozen, Line, Source, Word
from sld.grid.notices import AskedNotice
from sld.grid.settings import Setting, SettingsSet

__all__ = ["GROUPS", "Country"]

GROUPS = ("procedures", "duties", "interface", "imbalance", "papers", "points", "sets", "settings", "notices")
"""The groups of entries of a file; within one, names tell them apart."""


class Country(Frozen):
    """A country file.

    code: ISO 3166-1, or `generic`. rules: the book of rules that its operators go by; edition: the one in force, as far
    as is known. procedures: in order; the first whose conditions hold is the one. duties: each that holds adds to it.
    interface: whether protection at the interface may be built in, in order. imbalance: of single-phase units. sets,
    settings: of that protection. export_counted: whether a limit of the feed-in is a power, or a current a line.
    """

    code: Annotated[str, Field(pattern=r"^([A-Z]{2}|generic)$")]
    rules: Line
    edition: Line
    sources: dict[Word, Source]
    supply_point: SupplyPoint | None = None
    procedures: Annotated[tuple[Limit, ...], Field(min_length=1)]
    duties: tuple[Limit, ...] = ()
    interface: tuple[Limit, ...] = ()
    imbalance: tuple[Limit, ...] = ()
    papers: tuple[AskedPaper, ...] = ()
    points: tuple[AskedPoint, ...] = ()
    sets: tuple[SettingsSet, ...] = ()
    settings: tuple[Setting, ...] = ()
    notices: tuple[AskedNotice, ...] = ()
    export_counted: Literal["kW", "A"] = "kW"

    @property
    def book(self) -> str:
        """Return the books of rules with their editions, none named twice."""
        if self.edition in self.rules:
            return self.rules
        return ", ".join([*(each for each in self.rules.split(", ") if each not in self.edition), self.edition])

    def entries(self) -> Iterator[Entry]:
        """Yield every entry, in the order of the file."""
        if self.supply_point is not None:
            yield self.supply_point
        for group in GROUPS:
            yield from getattr(self, group)

    def replaced_by(self) -> tuple[str, ...]:
        """Return whose rules replace some of the entries."""
        return tuple(dict.fromkeys(each.override.by for each in self.entries() if each.override is not None))

    def limits(self) -> Iterator[Limit]:
        """Yield every entry that has conditions of its own."""
        for group in (self.procedures, self.duties, self.interface, self.imbalance):
            yield from group

    @model_validator(mode="after")
    def _last_procedure_always_holds(self) -> Self:
        if self.procedures[-1].when:
            raise ValueError(
                "the last of `procedures` has conditions: a system that meets none would have no procedure"
            )
        return self

    @model_validator(mode="after")
    def _settings_are_of_sets(self) -> Self:
        names = {each.name for each in self.sets}
        for each in self.settings:
            for name in each.sets:
                if name not in names:
                    raise ValueError(f"`{each.name}` of `settings` is of a set `{name}`, which is not among `sets`")
        return self

    @model_validator(mode="after")
    def _names_are_unique(self) -> Self:
        for group in GROUPS:
            names = [entry.name for entry in getattr(self, group)]
            for name in names:
                if names.count(name) > 1:
                    raise ValueError(f"two entries of `{group}` are named `{name}`")
        return self
