"""What whoever operates an installation is handed: operation, faults, maintenance, warranties."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date

__all__ = ["Upkeep", "Warranty"]


class Warranty(Block):
    """A warranty: of what, by whom, from when, for how long."""

    of: Text = Field(description="What it covers.")
    by: Text | None = Field(default=None, description="Who gives it.")
    start: Date | None = Field(default=None, description="Date on which it begins, YYYY-MM-DD.")
    years: Annotated[int, Field(ge=1, le=100)] | None = Field(default=None, description="For how many years.")


class Upkeep(Block):
    """Texts on operation and maintenance, in your words; each entry of a list is a paragraph."""

    operation: list[Text] = Field(default=[], description="How correct operation is checked.")
    faults: list[Text] = Field(default=[], description="What to do in the event of a fault.")
    emergency: list[Text] = Field(default=[], description="Emergency systems, and whom to call.")
    maintenance: list[Text] = Field(default=[], description="What is to be inspected, tested and cleaned, and when.")
    building_works: list[Text] = Field(
        default=[], description="What to mind when the building is worked on, for example the roof."
    )
    warranties: list[Warranty] = Field(default=[], description="Warranties of makers and installers.")
