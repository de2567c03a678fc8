"""Dates as a spec writes them."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from pydantic import AfterValidator

from sld.spec.fault import fault

__all__ = ["Date"]


def _real_date(text: str) -> str:
    try:
        if len(text) != 10:
            raise ValueError
        date.fromisoformat(text)
    except ValueError:
        raise fault(f"`{text}` is not a date", "write it as YYYY-MM-DD, for example 2026-03-02") from None
    return text


Date = Annotated[str, AfterValidator(_real_date)]
"""A date of the calendar, YYYY-MM-DD."""
