"""How far an entry can be relied on: computed from its sources, never written by hand."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from enum import Enum
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from sld.words import Phrase, phrase

__all__ = ["Frozen", "Line", "Source", "Standing", "Word", "standing"]


class Frozen(BaseModel):
    """A block of a country file: unknown keys refused, frozen once read."""

    model_config = ConfigDict(
        defer_build=True,  # most are only parts of others, which are built with them inside
        extra="forbid",
        frozen=True,
        allow_inf_nan=False,
    )


Line = Annotated[str, Field(min_length=1, max_length=300)]
"""One line of text that is the same in every language: the name of a form, a clause, a source."""

Word = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*$")]
"""The name of an entry, by which another file refers to it."""


class Source(Frozen):
    """Where something was read.

    mark: primary is the text of the operator, authority or standard itself; secondary is somebody who restates it;
    memory is nobody: nothing was seen. publisher: who answers for it; two of one publisher are not independent.
    edition: which one the page tells of. seen_on: when it was read. title, address: where to find it.
    """

    mark: Literal["primary", "secondary", "memory"]
    edition: Line
    publisher: Line | None = None
    address: Line | None = None
    seen_on: date | None = None

    @property
    def short_address(self) -> str:
        """Return the address without the path, which no column has room for; empty where there is none."""
        return re.sub(r"(\.[a-z]+)/[^\s,]*", r"\1", self.address or "")


class Standing(Enum):
    """What an entry is worth. The value: what is printed beside it."""

    CONFIRMED = phrase("confirmed")
    UNCONFIRMED = phrase("to be confirmed")
    DISPUTED = phrase("sources disagree")
    OVERRIDDEN = phrase("replaced for this place")

    @property
    def phrase(self) -> Phrase:
        """Return the words."""
        return self.value


_ENOUGH_SECONDARY = 2


def standing(edition: str, sources: Iterable[Source], disagreeing: bool = False) -> Standing:
    """Return what an entry is worth.

    Confirmed is what one primary source of the edition in force says, or two independent secondary ones that agree.
    edition: the one in force. disagreeing: whether a source says something else.
    """
    if disagreeing:
        return Standing.DISPUTED
    in_force = [each for each in sources if each.edition == edition]
    primary = any(each.mark == "primary" for each in in_force)
    secondary = {each.publisher for each in in_force if each.mark == "secondary"}
    return Standing.CONFIRMED if primary or len(secondary) >= _ENOUGH_SECONDARY else Standing.UNCONFIRMED
