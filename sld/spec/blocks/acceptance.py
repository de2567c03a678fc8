"""A deliberate deviation that is accepted in writing."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date

__all__ = ["Accept"]


class Accept(Block):
    """Accept a finding; it is printed on the sheet with reason, role and date."""

    code: Annotated[str, StringConstraints(pattern=r"^[A-Z]{1,6}[0-9]{2,4}$")] = Field(
        description="Code of the finding."
    )
    at: Text = Field(
        description="The place: a path such as `inverters.north.inputs[0]` (entries count from 0), a block around it, "
        "the designation that is printed, such as -TB1, or the `device` of the finding as JSON."
    )
    reason: Text = Field(description="Why it is acceptable.")
    role: Text = Field(description="Role of who is responsible.")
    date: Date = Field(description="Date of the decision, YYYY-MM-DD.")
