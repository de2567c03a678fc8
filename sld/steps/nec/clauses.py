"""The clauses of the code for what the common steps rate: the same formula, cited from the other book.

A clause of IEC 60364, IEC 62548 or BS 7671 does not hold in a project under the National Electrical Code. What has a
section there is cited by it; definitions, physics and test standards keep their sources. Section numbers of NEC 2023 as
public sources give them (from memory).
"""

from __future__ import annotations

from types import MappingProxyType

from sld.citation import (
    Citation,
    Citations,
    citations,
    cited,
    clause_from_memory,
    clauses_from_memory,
    from_memory,
    in_annex,
    in_table,
)
from sld.frozen import replace
from sld.quantity import Rating
from sld.steps.ledger import Ratings
from sld.words import Sayable, phrase

__all__ = ["restated"]

_MAKER = phrase("data of the maker")
_NO_FIGURE = cited(phrase("IEC figure: the National Electrical Code lays down none"))

_SECTIONS: dict[Sayable, Citation] = {
    clauses_from_memory("IEC 60364-7-712:2017 712.433", "IEC 60364-5-52:2009 523"): from_memory(
        "NEC 2023 690.8(A), 705.28(A)"
    ),
    clauses_from_memory("IEC 62548:2016 7.2", "NEC 2023 690.7(A)(1)"): from_memory("NEC 2023 690.7(A)(1)"),
    cited(phrase("{standard} Table 690.7(A), UTE C15-712-1", standard="NEC 2023")): cited(
        in_table("NEC 2023", "690.7(A)")
    ),
    clauses_from_memory("UTE C15-712-1, IEC 61730-2 MST 26"): cited("NEC 2023 690.9(A)(1)"),
    clause_from_memory(in_annex("IEC 62548-1:2023", "F")): from_memory(_MAKER, "NEC 2023 690.8(A)(1)"),
    cited("IEC 60947-3", "UTE C15-712-1 14.1"): from_memory("NEC 2023 690.13(E)"),
    clause_from_memory(phrase("common practice"), "IEC 62548:2016 7.2"): cited(phrase("common practice")),
    cited("AS/NZS 4777.1:2016 3.3.3", remark=phrase("whole path")): cited(phrase("sum over the whole way")),
    from_memory("IEC 62053-21", "EN 50470-3"): cited(phrase("common practice: rating of the device ahead")),
    clauses_from_memory("IEC 60269-6", "IEC 62548:2016 6.5"): from_memory("NEC 2023 690.9(B)"),
    from_memory("IEC 60364-1 312.2", "IEC 60364-5-54 543.1"): from_memory("NEC 2023 250.118, 250.24"),
    from_memory("IEC 60269-6", _MAKER): from_memory(_MAKER),
    clause_from_memory("IEC 62548:2016 7.3"): from_memory("NEC 2023 690.7"),
    clause_from_memory(phrase("{standard}, blocking diodes", standard="IEC 62548:2016")): _NO_FIGURE,
    clause_from_memory(phrase("{standard}, conventional fusing current", standard="IEC 60269-6")): cited(
        phrase("IEC figure of gPV fuse links: the National Electrical Code lays down none")
    ),
    clause_from_memory(phrase("{standard}, grouped strings", standard="IEC 62548:2016 6.5")): cited(
        phrase("IEC figure of grouped strings: the National Electrical Code lays down none")
    ),
    from_memory(phrase("{standard} operating range", standard="EN 50549-1:2019")): cited(
        phrase("European figure of the operating range: the National Electrical Code lays down none")
    ),
    from_memory("IEC 62485-2:2010 5", "IEC 60364-5-53:2019 536"): from_memory("NEC 2023 706.31(C)"),
    cited("IEC 60364-4-43:2008 433.1"): from_memory("NEC 2023 706.30"),
}
"""A citation of the common formulas, and what stands in its place under the code; those not listed stay."""

_BESIDE_THE_CODE = {
    clause_from_memory("IEC 62548:2016 7.2"),
    clause_from_memory("IEC 62548:2016 7.3"),
    clause_from_memory("IEC 60269-6"),
}
"""What is left out where it stands beside another source, which holds under the code too."""


def restated(ratings: Ratings) -> Ratings:
    """Return the same ratings, cited by the code."""
    values = {
        key: MappingProxyType({symbol: _restated(rating) for symbol, rating in of_device.items()})
        for key, of_device in ratings.values.items()
    }
    return replace(ratings, values=MappingProxyType(values))


def _restated(rating: Rating) -> Rating:
    if isinstance(rating.clause, Citations):
        parts = [part for part in rating.clause.parts if part not in _BESIDE_THE_CODE]
        return replace(rating, clause=citations(*(_SECTIONS.get(part, part) for part in parts)))
    return replace(rating, clause=_SECTIONS.get(rating.clause, rating.clause))
