"""Who has a part in the work: each particular below its heading."""

from __future__ import annotations

from test_documents_procedure import spec

from sld import run
from sld.documents.particulars.people import parties
from sld.words import ENGLISH


def test_each_particular_of_a_party_stands_below_its_heading() -> None:
    data = spec("GB")
    data["project"]["designer"] = {
        "company": "Weir Works", "contact": "office", "licence": "L 7", "address": "4 Weir Lane", "phone": "0700 1",
        "email": "office@weir.example",
    }  # fmt: skip
    table = parties(run.check_mapping(data).system)
    heads = [ENGLISH.say(column.heading) for column in table.columns]
    rows = [dict(zip(heads, map(ENGLISH.say, row), strict=True)) for row in table.rows]
    assert [row for row in rows if row["Part in the work"] == "designer"] == [
        {
            "Part in the work": "designer", "Firm": "Weir Works", "To ask for": "office", "Licence": "L 7",
            "Address": "4 Weir Lane", "Telephone": "0700 1", "E-mail": "office@weir.example",
        }
    ]  # fmt: skip
