"""Which symbol stands at a device: the ink on the sheet is compared with that of every symbol of the catalogue."""

from __future__ import annotations

from io import BytesIO
from itertools import pairwise
from typing import Any

import pytest
from printed_sheet import drawing

from sld.render import png
from sld.sheet.ink import moved
from sld.sheet.sheet import Group, Sheet
from sld.symbols import catalogue
from sld.symbols.stroke import Circle, Dash, Polyline, Text

SYMBOLS = [
    ("workshop", "-GA1", "Public network"),
    ("yard", "-TA1", "Transformer, two windings"),
    ("workshop", "-FC1", "Fuse"),
    # meters: by current transformers, both directions, one direction; transformers go before directions
    ("workshop", "-UC1-PG1", "Energy meter with current transformers"),
    ("workshop", "-UC1-PG2", "Energy meter for both directions"),
    ("workshop", "-TB1-PG1", "Energy meter"),
    ("cottage", "-UC1-PG1", "Energy meter"),
    ("cottage", "-TB1-PG1", "Energy meter with current transformers"),
    # what isolates and switches under load, what isolates only, what switches only
    ("workshop", "-UC1-QB1", "Switch-disconnector"),
    ("workshop", "-TB1-QB1", "Switch-disconnector"),
    ("workshop", "-TB1-QB3", "Switch-disconnector"),
    ("workshop", "-TB1-QB2", "Disconnector"),
    ("workshop", "-TB1-QA1", "Contactor"),
    ("workshop", "-TB1-QA2", "Remote DC switching for rapid shutdown"),
    # overcurrent and residual current protection
    ("workshop", "-GB1-FC1", "Miniature circuit-breaker"),
    ("workshop", "-TB1-FC1", "Moulded-case circuit-breaker"),
    ("workshop", "-TB1-FC5", "Moulded-case circuit-breaker"),
    ("cottage", "-TB1-FC5", "Miniature circuit-breaker"),
    ("yard", "-TB1…5-FC2", "Miniature circuit-breaker"),
    ("yard", "-TB6-FC2", "Moulded-case circuit-breaker"),
    ("workshop", "-UC2-FC1", "Fuse-switch-disconnector"),
    ("workshop", "-EZ2-FC1", "Fuse"),
    ("workshop", "-TB1-FC2…4", "Fuse"),
    ("cottage", "-TB1-FC4", "Fuse"),
    ("workshop", "-TB1-FB1", "Residual current device"),
    ("workshop", "-TB2-FB1", "Residual current circuit-breaker with overcurrent protection"),
    ("workshop", "-TB1-BU1", "Interface protection with coupling switch"),
    # surge protection by its type
    ("workshop", "-UC1-FA1", "Surge protective device, types 1 and 2"),
    ("cottage", "-UC1-FA1", "Surge protective device, type 1"),
    ("cottage", "-TB1-FA2", "Surge protective device, types 1 and 2"),
    ("workshop", "-TB1-FA1", "Surge protective device, type 2"),
    ("yard", "-UC1-FA1", "Surge protective device, type 2"),
    # cables by the number of their conductors
    ("workshop", "-UC2-WD1", "Cable with 5 conductors"),
    ("workshop", "-TB1-WD1", "Cable with 5 conductors"),
    ("workshop", "-TB2-WD1", "Cable with 3 conductors"),
    ("cottage", "-WC2-WD1", "Cable with 3 conductors"),
    ("workshop", "-TB1-WD2…4", "Cable with 2 conductors"),
    ("ranch", "-TB1-WD1", "Cable with 3 conductors"),
    # inverters by phases, separation and size
    ("workshop", "-TB1", "Inverter, three-phase"),
    ("workshop", "-TB2", "Inverter, single-phase, galvanically separated"),
    ("cottage", "-TB1", "Inverter, single-phase"),
    ("cottage", "-TB2", "Micro-inverter"),
    ("yard", "-TB1…5", "Inverter, three-phase, galvanically separated"),
    ("yard", "-TB6", "Micro-inverter, three-phase"),
    ("ranch", "-TB1", "Inverter, single-phase"),
    # generators: several strings, one, a single module
    ("workshop", "-TB1-GC1…3", "PV array of several strings"),
    ("cottage", "-TB1-GC1…2", "PV array of several strings"),
    ("workshop", "-TB1-GC4", "PV string"),
    ("yard", "-TB6-GC1", "PV string"),
    ("cottage", "-TB2-GC1", "PV module"),
    ("workshop", "-TB1-XD1", "Terminal"),
    ("workshop", "-TB1-XD3", "Plug connector"),
    ("workshop", "-TB1-RA1", "Blocking diode"),
    ("workshop", "-TB1-BU2", "Insulation monitoring device"),
    # a battery with a converter of its own, one on the DC side behind a charge converter
    ("workshop", "-GB1", "Battery with its converter, coupled on the AC side"),
    ("cottage", "-GB1", "Battery"),
    ("cottage", "-GB1-TA1", "Charge converter, direct current to direct current"),
    ("workshop", "-EZ1", "Load"),
    ("workshop", "-EZ2", "Charge point for electric vehicles"),
    ("workshop", "-GA2", "Generator"),
    ("workshop", "-KF1", "Data logger"),
    ("workshop", "-KF2", "Energy management system"),
    ("workshop", "-TF1", "Router"),
    ("workshop", "-TF2", "Wireless link"),
    ("workshop", "-WE1", "Earth electrode"),
    ("workshop", "-WE3", "Equipotential bonding"),
    ("workshop", "-WE3", "Equipotential bonding"),
    ("workshop", "-WE5", "Lightning protection system"),
    # the family of IEEE 315 under the NEC
    ("ranch", "-GA1", "Utility supply"),
    ("ranch", "-UC1-PG1", "Watthour meter for both directions"),
    ("ranch", "-UC1-FC1", "Molded-case circuit breaker"),
    ("ranch", "-EZ1-FC1", "Circuit breaker"),
    ("ranch", "-TB1-FB1", "Ground-fault protective device"),
    ("ranch", "-TB1-QB2", "Disconnect switch, load break"),
    ("ranch", "-WE1", "Grounding electrode"),
]


@pytest.mark.parametrize(("spec", "designation", "meaning"), SYMBOLS)
def test_symbol(spec: str, designation: str, meaning: str) -> None:
    assert drawing(spec).meaning(designation) == meaning


# IEC 60617: three phases by a 3 or three strokes; IΔ of a residual current device; T1, T2 of EN 61643
LETTERS = [
    ("workshop", "-TB1", "3"),
    ("workshop", "-TB2", ""),
    ("cottage", "-TB1", ""),
    ("cottage", "-TB2", ""),
    ("yard", "-TB1…5", "3"),
    ("yard", "-TB6", "3"),
    ("workshop", "-UC2-WD1", "5"),
    ("workshop", "-UC1-FA1", "T1+T2"),
    ("workshop", "-TB1-FA1", "T2"),
    ("cottage", "-UC1-FA1", "T1"),
    ("cottage", "-TB1-FA1", "T1"),
    ("workshop", "-TB1-FB1", "IΔ"),
    ("workshop", "-TB1-QA2", "RSD"),
    ("workshop", "-UC1-PG1", "kWh"),
    ("ranch", "-UC1-PG1", "WH"),
    ("ranch", "-TB1-FB1", "GF"),
]


@pytest.mark.parametrize(("spec", "designation", "letters"), LETTERS)
def test_letters_inside(spec: str, designation: str, letters: str) -> None:
    assert drawing(spec).marks(designation) == letters


@pytest.mark.parametrize(
    ("spec", "designation", "count"),
    [("workshop", "-TB2-WD1", 3), ("cottage", "-WC2-WD1", 3), ("workshop", "-TB1-WD5", 2), ("ranch", "-TB1-WD1", 3)],
)
def test_a_cable_has_as_many_strokes_as_conductors(spec: str, designation: str, count: int) -> None:
    """IEC 60617: the conductors of one line are counted by strokes, more than three by one stroke and the number."""
    pieces = [
        piece
        for stroke in drawing(spec).device(designation).strokes
        if isinstance(stroke, Polyline)
        for piece in pairwise(stroke.points)
    ]
    assert sum(abs(a[0] - b[0]) > 0.1 and abs(a[1] - b[1]) > 0.1 for a, b in pieces) == count


def test_a_busbar_is_one_thick_line_along_all_that_it_feeds() -> None:
    shapes = [stroke for stroke in drawing("workshop").device("-UC1").strokes if not isinstance(stroke, Text)]
    (line,) = shapes
    assert isinstance(line, Polyline)
    assert line.width_mm == 0.7
    assert len({x for x, _ in line.points}) == 1


@pytest.mark.parametrize(
    ("spec", "designation", "status", "dashed"),
    [("workshop", "-UC1-QB1", "new", False), ("workshop", "-EZ1", "existing", False),
     ("cottage", "-TB4", "future", True), ("cottage", "-TB1-QB3", "future", True),
     ("cottage", "-TB1-QB1", "existing", False)],
)  # fmt: skip
def test_status_of_a_device(spec: str, designation: str, status: str, dashed: bool) -> None:
    """Existing thinner than new, planned thinner and dashed (common practice, no source; the legend says so)."""
    group = drawing(spec).device(designation)
    shapes = [stroke for stroke in group.strokes if isinstance(stroke, Polyline)]
    assert group.status == status
    assert any(stroke.dash is Dash.DASHED for stroke in shapes) == dashed
    thinner = min(stroke.width_mm for stroke in shapes) < min(
        stroke.width_mm for stroke in drawing("workshop").device("-TB1-QB1").strokes if isinstance(stroke, Polyline)
    )
    assert thinner == (status != "new")


def ink_of(spec: str, designation: str) -> Any:
    """The symbol of a device in dots, 20 to a millimetre, its origin in the middle; ink is white."""
    image = pytest.importorskip("PIL.Image")
    group = drawing(spec).device(designation)
    assert group.at
    strokes = tuple(
        moved(stroke, 30 - group.at[0], 30 - group.at[1]) for stroke in group.strokes if not isinstance(stroke, Text)
    )
    sheet = Sheet(60.0, 60.0, 1, "Symbol", "", "en", (Group("symbol", "table", strokes),))
    return image.open(BytesIO(png(sheet, 20 * 25.4))).convert("L").point(lambda value: 255 if value < 128 else 0)


@pytest.mark.parametrize("designation", ["-TB1-FA1", "-TB1-QB3", "-TB4-FC1", "-TB4", "-TB4-GC1"])
def test_round_shapes_of_a_planned_device_are_closed(designation: str) -> None:
    """An arc beside them would be told from a circle by that alone: each circle of the symbol is a closed chain."""
    group = drawing("cottage").device(designation)
    round_ones = [each for each in catalogue.symbol(group.kind).strokes if isinstance(each, Circle)]
    chains = [each for each in group.strokes if isinstance(each, Polyline) and len(each.points) > 20]
    assert [each.closed for each in chains] == [True] * len(round_ones)
    assert {each.dash for each in group.strokes if isinstance(each, Polyline) and each.closed} <= {Dash.DASHED}


@pytest.mark.parametrize(
    ("planned", "new"),
    [(("cottage", "-TB4"), ("cottage", "-TB2")), (("cottage", "-TB1-QB3"), ("cottage", "-TB2-QB1")),
     (("cottage", "-TB1-FA1"), ("cottage", "-UC1-FA1")), (("cottage", "-TB4-FC1"), ("cottage", "-WC2-FC1"))],
)  # fmt: skip
def test_a_planned_device_has_the_dashed_shape_of_a_new_one(planned: tuple[str, str], new: tuple[str, str]) -> None:
    """Round shapes too: all of its ink lies on that of the other, and reaches as far."""
    chops, filters = pytest.importorskip("PIL.ImageChops"), pytest.importorskip("PIL.ImageFilter")
    dashed, whole = ink_of(*planned), ink_of(*new)
    strange = chops.subtract(dashed, whole.filter(filters.MaxFilter(5)))
    assert strange.histogram()[255] == 0
    assert dashed.getbbox() == pytest.approx(whole.getbbox(), abs=12)  # in dots: a dash and a wider lead
    assert 0.3 < dashed.histogram()[255] / whole.histogram()[255] < 0.95
