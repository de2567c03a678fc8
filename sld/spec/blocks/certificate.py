"""What certifies a type: the reference by which a network operator finds it."""

from __future__ import annotations

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date

__all__ = ["Certificate"]


class Certificate(Block):
    """A certificate, type test or entry in a register of a type."""

    reference: Text = Field(description="Its number, or that of the entry in the register.")
    standard: Text | None = Field(default=None, description="The standard that it is about, with its edition.")
    issued_by: Text | None = Field(default=None, description="Who issued it, or whose register it is.")
    date: Date | None = Field(default=None, description="Date of issue, YYYY-MM-DD.")
