"""The entries of a country file, typed: limits, papers, points, the number of the supply point, and what each rests on.

An entry names its sources; what it is worth follows from them (`standing`) and cannot be written down.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import Field, ValidationInfo, field_validator, model_validator

from sld.grid.asked import Paper, Point
from sld.grid.evidence import Frozen, Line, Source, Standing, Word, standing
from sld.grid.outcome import Outcome
from sld.grid.quantity import UNITS, Quantity, Sign
from sld.words import Amount, Sayable, amount, phrase, sequence, verbatim

__all__ = ["AskedPaper", "AskedPoint", "Condition", "Entry", "Limit", "Override", "SupplyPoint"]


AS_PUBLISHED = "as published"
"""The edition of a page that names none: as it was on the day it was seen."""


class Condition(Frozen):
    """A quantity, how it is compared, and with what."""

    quantity: Quantity
    sign: Sign
    limit: Annotated[float, Field(ge=0)]
    unit: str

    @model_validator(mode="after")
    def _unit_is_that_of_the_quantity(self) -> Self:
        expected, _ = UNITS[self.quantity]
        if self.unit != expected:
            raise ValueError(f"a limit of {self.quantity.value} is in {expected}, not in `{self.unit}`")
        return self

    @property
    def base_limit(self) -> float:
        """Return the limit in A, W or VA."""
        return self.limit * UNITS[self.quantity][1]

    @property
    def opposite(self) -> Self:
        """Return the condition that holds where this one does not."""
        return self.model_copy(update={"sign": self.sign.opposite})

    @property
    def amount(self) -> Amount:
        """Return the limit as it is written."""
        return amount(self.limit, self.unit, 4)

    def measured(self, value: float) -> Amount:
        """Return a value of the quantity, in A, W or VA, in the unit of the limit."""
        return amount(value / UNITS[self.quantity][1], self.unit, 4)


class Differing(Frozen):
    """What another source says of the first condition of an entry."""

    source: Word
    sign: Sign
    limit: Annotated[float, Field(ge=0)]


class Override(Frozen):
    """That an operator or town replaced an entry: the reason given, and whose rule it is."""

    reason: Line
    by: Line


class Entry(Frozen):
    """What all entries have.

    clause: what asks for it by its name, which is the same in every language; left out for the operator's own
    conditions. edition: the one in force, as far as is known, `as published` for a page without. sources:
    names of the file's `sources`. resolved: these sources themselves, put there by the reader of the file. override:
    put there by an override.
    """

    name: Word
    clause: Line | None = None
    edition: Line
    sources: Annotated[tuple[Word, ...], Field(min_length=1)]
    resolved: tuple[Source, ...] = ()
    override: Override | None = None

    @field_validator("resolved", "override", mode="before")
    @classmethod
    def _not_by_hand(cls, given: Any, info: ValidationInfo) -> Any:
        written = given if isinstance(given, list | tuple) else (given,)
        if any(isinstance(each, dict) for each in written):
            raise ValueError(f"`{info.field_name}` is not written in a file")
        return given

    @property
    def cited(self) -> Sayable:
        """Return the clause with its edition."""
        clause = verbatim(self.clause) if self.clause else phrase("conditions of the operator")
        if self.edition == AS_PUBLISHED:
            return sequence([clause, phrase("as published")])
        return clause if self.clause and self.edition in self.clause else sequence([clause, self.edition])

    @property
    def disagreeing(self) -> bool:
        """Return whether a source says something else."""
        return False

    @property
    def standing(self) -> Standing:
        """Return what the entry is worth, computed from its sources."""
        if self.override is not None:
            return Standing.OVERRIDDEN
        return standing(self.edition, self.resolved, self.disagreeing)


class Limit(Entry):
    """What follows where all conditions hold; without conditions, always.

    phases: of the supply, where it holds for one kind alone. form: the form or paper by its name. days: a time before
    or after. share_percent: a share that the outcome speaks of. differs: what other sources say.
    """

    when: tuple[Condition, ...] = ()
    phases: Literal[1, 3] | None = None
    outcome: Outcome
    form: Line | None = None
    days: Annotated[int, Field(ge=1, le=400)] | None = None
    share_percent: Annotated[float, Field(gt=0, le=100)] | None = None
    differs: tuple[Differing, ...] = ()

    @property
    def disagreeing(self) -> bool:
        """Return whether a source has another limit or sign."""
        return bool(self.differs)


class AskedPaper(Entry):
    """A document to hand in. when, phases: as of a limit. before: handed in before work begins, else after."""

    paper: Paper
    when: tuple[Condition, ...] = ()
    form: Line | None = None
    before: bool = True


class AskedPoint(Entry):
    """A point that the diagram has to show."""

    point: Point


class SupplyPoint(Entry):
    """The number of a supply point: what it is called, its form, and the rule of its check digit.

    form: a regular expression of the number without spaces and dots, None where there is no national one. described:
    how it is written, in signs. check: the rule of the check digit, see `check_digit.py`.
    """

    called: Line
    described: Line
    form: str | None = None
    check: Literal["mpan", "malo", "cups", "gs1", "nmi"] | None = None
