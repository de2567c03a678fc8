"""The clauses of the code for what the common steps rate: the same formula, cited from the other book.

A clause of IEC 60364, IEC 62548 or BS 7671 does not hold in a project under the National Electrical Code. What has a
section there is cited by it; definitions, physics and test standards keep their sources.
"""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from sld.quantity import Rating
from sld.steps.ledger import Ratings
from sld.tables.table import table

__all__ = ["restated"]


def restated(ratings: Ratings) -> Ratings:
    """Return the same ratings, cited by the code."""
    values = {
        key: MappingProxyType({symbol: _restated(rating) for symbol, rating in of_device.items()})
        for key, of_device in ratings.values.items()
    }
    return replace(ratings, values=MappingProxyType(values))


def _restated(rating: Rating) -> Rating:
    found = table("nec_clauses").where(clause=str(rating.clause))
    return replace(rating, clause=found[0]["nec"]) if found else rating
