"""Papers that belong to an installation and are not made here: data sheets, manuals, certificates, plans."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date

__all__ = ["Paper"]


class Paper(Block):
    """A document that is attached or referred to."""

    title: Text = Field(description="What it is called.")
    kind: Literal[
        "data_sheet", "manual", "certificate", "site_plan", "array_plan", "calculation", "test_record", "other"
    ] = Field(description="What kind of document it is.")
    of: Text | None = Field(
        default=None,
        description="What it is about: the name of a type or a device, or free text. A data sheet answers for the type "
        "that it names.",
    )
    file: Text | None = Field(default=None, description="Name of the file; it is printed, and not opened.")
    reference: Text | None = Field(default=None, description="Number or reference, where it is no file.")
    date: Date | None = Field(default=None, description="Its date, YYYY-MM-DD.")
