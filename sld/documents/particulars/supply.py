"""The connection to the network, its meters, and what the installation can put into it."""

from __future__ import annotations

from sld.documents.cell import Cell, answer, answering, computed, designated, given, of_rating
from sld.documents.section import Column, Form, Table
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import Meter
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, amount, phrase, sequence, verbatim

__all__ = ["meters", "powers", "supply_form"]


def supply_form(system: System, ratings: Ratings) -> Form:
    """Return the supply point and what is connected there."""
    supply = system.supply
    contracted, limit_w = supply.contracted_power, supply.export_limit_w
    fields: list[tuple[Sayable, Cell]] = [
        (phrase("Network operator"), answer("operator", supply.operator)),
        (phrase("Country"), answer("country", supply.country)),
        (phrase("Number of the supply point"), answer("supply_point", supply.supply_point)),
        (phrase("Other supply points of the site"), given(sequence(supply.other_supply_points))),
        (
            phrase("Contracted power"),
            answer("contracted_power", _kilo(contracted.value, contracted.unit) if contracted else None),
        ),
        (
            phrase("Service fuse"),
            answer("service_fuse", amount(supply.service_fuse_a, "A") if supply.service_fuse_a else None),
        ),
        (phrase("Phases and nominal voltage"), answering("voltage", computed(_voltage(system)))),
        (phrase("Earthing system"), answer("earthing_system", supply.earthing_system)),
        (
            phrase("Feed-in limit at the supply point"),
            answer("export_limit", _kilo(limit_w, "W") if limit_w is not None else None),
        ),
        (phrase("Fault current at the supply"), answering("fault_current", of_rating(ratings.get("", Symbol.IPF)))),
    ]
    return Form("supply", phrase("Connection to the network"), tuple(fields))


def _kilo(value: float, unit: str) -> Sayable:
    return amount(value / 1000, f"k{unit}", 4)


def _voltage(system: System) -> Sayable:
    return phrase(
        "{phases} ~ {voltage}, {frequency}",
        phases=system.supply.phases,
        voltage=amount(system.voltage_v, "V"),
        frequency=amount(system.supply.frequency_hz, "Hz"),
    )


def powers(system: System, ratings: Ratings) -> Form:
    """Return the powers of the installation, each a rating with its own trace."""
    asked = (
        (phrase("Rated DC power, modules at STC"), Symbol.PDC, "kWp", "dc_power"),
        (phrase("Rated AC power"), Symbol.PAC, "kW", "ac_power"),
        (phrase("Highest apparent power"), Symbol.SAC, "kVA", "apparent_power"),
    )
    fields: list[tuple[Sayable, Cell]] = []
    for caption, symbol, unit, question in asked:
        rating = ratings.get("", symbol)
        text = amount(rating.value / 1000, unit, 4) if rating else None
        fields.append((caption, answering(question, of_rating(rating, text))))
    exported = ratings.get("", Symbol.IEXPORT)
    fields.append((phrase("Export current a line, no diversity"), answering("export_current", of_rating(exported))))
    rise = ratings.get("", Symbol.DU_AC)
    fields.append((phrase("Highest rise to an inverter"), answering("voltage_rise", of_rating(rise))))
    return Form("powers", phrase("Powers"), tuple(fields))


_PURPOSES = {
    "supply": phrase("supply meter"),
    "generation": phrase("generation meter"),
    "feed_in_limit": phrase("meter of the feed-in limit"),
}


def meters(system: System) -> Table:
    """Return the meters with their numbers, and what their current transformers are around."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Meter"), 1.0),
        Column(phrase("Number"), 1.0),
        Column(phrase("Direction")),
        Column(phrase("Current transformers on")),
    )
    rows = tuple(_meter(device.designation, said) for device, said in system.given_as(METER))
    return Table("meters", phrase("Meters"), columns, rows)


def _meter(designation: str, said: Meter) -> tuple[Cell, ...]:
    both = {True: phrase("both"), False: phrase("one"), None: NOTHING}[said.bidirectional]
    lines = verbatim(", ".join(said.ct_lines)) if said.ct_lines else NOTHING
    return (
        designated(designation),
        given(_PURPOSES[said.purpose]),
        answer("meter_number", said.number),
        answer("meter_direction", both) if said.purpose == "supply" else given(both),
        answer("ct_lines", lines) if said.connection == "ct" else given(lines),
    )
