"""What the network operator and the permit office ask about those who apply, and about the application itself."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date
from sld.spec.blocks.project import Party

__all__ = ["Notification"]


class Notification(Block):
    """The application to the network operator. It changes no rating; what is left out is printed as a blank."""

    application: Literal["new", "extension", "replacement"] | None = Field(
        default=None, description="Whether the installation is new, extends one that is there, or replaces one."
    )
    applicant: Party | None = Field(
        default=None, description="Who applies, for example the future operator of the plant."
    )
    account_holder: Text | None = Field(
        default=None, description="Holder of the account at the network operator, as on the bill."
    )
    account_number: Text | None = Field(default=None, description="Number of that account, as on the bill.")
    parcel_number: Text | None = Field(default=None, description="Number of the parcel of land in the land register.")
    work_begins: Date | None = Field(default=None, description="Date on which the work is planned to begin.")
    commissioning_planned: Date | None = Field(
        default=None, description="Date for which the commissioning is planned; `project.commissioned` is when it was."
    )
