"""Which printed values carry the sign for what is from memory, and what the sheet says of it to each reader.

What is from memory stands in the front matter of a table, or in a clause: the ambient factors of solar cables, the
categories of DC isolators, 433.1 of IEC 60364-4-43 (overload), the limits of residual current monitoring. Read in a
source are the capacities of IEC 60364-5-52 and the fault levels of IEC 60909.
"""

from __future__ import annotations

import pytest
from printed_sheet import drawing

LABELS = [
    ("workshop", "-TB1-QB4", "500 V* 16 A* DC-PV1 2P"),
    ("workshop", "-WE5", "lightning protection system 16 mm²* Cu class II, 4 down-conductors separation to the array "
     "NOT kept"),
    ("cottage", "-UC1-FA1", "Uc ≥ 253 V*"),
    ("cottage", "-TB1-BU1", "Un ≥ 528 V alarm ≥ 17.6 kΩ*"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "designation", "text"), LABELS)
def test_beside_a_device(spec: str, designation: str, text: str) -> None:
    assert drawing(spec).signed(designation) == text


def test_in_the_summary_and_a_schedule() -> None:
    _, rows = drawing("workshop").table("Summary")
    values = {name: value for row in rows for name, value in zip(row[::2], row[1::2], strict=True)}
    assert values["Insulation test; before start"] == "500 V, ≥ 1 MΩ; ≥ 30 kΩ*"
    assert values["Array leakage, monitor"] == "42.6 mA ≤ 300 mA*"
    assert values["Fault current, loop of the supply"] == "8 kA, 0.2 Ω"
    heads, cables = drawing("workshop").table("Cable schedule")
    (carried,) = [row[heads.index("Iz,min / Iz")] for row in cables if row[0] == "-TB2-WD1"]
    assert carried.endswith("*")


CALCULATION = "The calculation names it at each value."
ELSEWHERE = "The designer's calculation, which is not part of these papers, names it at each value."


@pytest.mark.parametrize(
    ("reader", "said", "unsaid"),
    [("full", CALCULATION, ELSEWHERE), ("operator", CALCULATION, ELSEWHERE), ("crew", ELSEWHERE, CALCULATION)],
)
def test_a_reader_is_sent_to_a_calculation_only_where_there_is_one(reader: str, said: str, unsaid: str) -> None:
    words = " ".join(drawing("workshop", reader).texts()).replace("\u00a0", " ")
    assert "* rests on a clause, a table, a limit or a formula from memory" in words
    assert said in words
    assert unsaid not in words


def test_a_finding_has_the_sign_where_a_clause_of_its_rule_is_from_memory() -> None:
    codes = [row.split()[0] for row in drawing("workshop").flagged("Findings").values()]
    # DC24 is common practice and says so; the clause of AC43 is from memory, as its page says
    assert "AC43*" in codes
    assert "DC24" in codes
