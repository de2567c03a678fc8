"""The equipment schedule, device by device: word, make, ratings, place, status. Worked by hand as in the labels."""

from __future__ import annotations

import pytest
from printed_sheet import checked, drawing

from sld.documents.drawing.equipment import equipment
from sld.words import ENGLISH

# "read Zs" is 2/3 · 230 V / Ia (IEC 60364-6): Ia of gG fuses by IEC 60269-1, 5, 10, 20 In of curves B, C, D; a fuse of
# 50 A holds 350 A for 0.1 s, one of 100 A 820 A; gG before gG with at least 1.6 times the current is selective to Ik
EQUIPMENT = [
    ("workshop", "-FC1", "service fuse", "–", "100 A gG", "–", "existing"),
    ("workshop", "-UC1-PG1", "meter", "–", "supply meter, CT 100/5 A, No. 77 31, leads 4 m, 1.48 VA",
     "-UC1, yard (outdoors)", "existing"),  # 5² A² · 2 · 4 m · 7.41 Ω/km
    ("workshop", "-UC1-QB1", "main switch", "Thornby S100", "100 A 3P", "-UC1, switch room", "new"),
    ("workshop", "-UC1-FA1", "surge protective device", "–",
     "Uc 320 V, Up 1.3 kV, type 1+2 (T1 + T2), Iimp 12.5 kA, backup fuse ≤ 125 A, leads 0.4 m, to earth ≥ 16 mm² Cu",
     "-UC1, switch room", "new"),
    ("workshop", "-UC1-PG2", "meter", "–", "feed-in limit, 80 A direct", "-UC1, switch room", "new"),
    ("workshop", "-UC1", "board", "–",
     "125 A, Ik 8 kA, ip 13.6 kA, Icw 10 kA, Ipk 17 kA, RDF 0.8 (main board; doors to the left)", "switch room", "new"),
    ("workshop", "-UC2", "board", "–", "80 A, Ik 3.81 kA, ip 5.71 kA, Icc 9 kA (annex board)", "–", "new"),
    ("workshop", "-UC2-FC1", "fuse-switch-disconnector", "–",
     "50 A gG, Icn 50 kA, selective up to 8 kA, read Zs ≤ 0.613 Ω", "-UC1, switch room", "new"),
    ("workshop", "-TB2-FB1", "RCBO", "–",
     "B 16 A 2P, type A, 30 mA, Icn 6 kA, selective up to 350 A, read Zs ≤ 1.92 Ω, for one direction of power only",
     "-UC2", "new"),
    ("workshop", "-TB2", "inverter", "Orrin S3",
     "3 kW, Ib 14 A, on L2, DC ≤ 600 V, MPP 100 to 500 V, galvanic separation",
     "yard (outdoors)", "new"),
    ("workshop", "-TB1", "inverter", "Orrin S10",
     "10 kW 11 kVA, Ib 16 A, cos φ 0.95, set to ≤ 9 kW, built in: DC switch, AC surge protection type 2, DC ≤ 900 V, "
     "MPP 150 to 800 V, starts at 180 V, smooth DC residual current ≤ 6 mA, leakage 40 mA, backfeed 2 A, arc-fault "
     "protection, cos φ ≥ 0.8", "switch room", "new"),
    ("workshop", "-TB1-FC1", "moulded-case circuit-breaker", "–",
     "32 A 3P, Icu 16 kA, selective up to 820 A, read Zs ≤ 0.599 Ω, trips at 8 In at most", "-UC1, switch room", "new"),
    ("workshop", "-TB1-FB1", "RCD", "–", "40 A 4P, type B S, 300 mA", "-UC1, switch room", "new"),
    ("workshop", "-TB1-PG1", "meter", "–", "generation meter, 60 A direct, counts one direction only",
     "-UC1, switch room", "new"),
    ("workshop", "-TB1-BU1", "interface protection", "–", "40 A 4P, Lowmere table 3", "-UC1, switch room", "new"),
    ("workshop", "-TB1-QA1", "contactor", "–", "25 A 4P", "-UC1, switch room", "new"),
    ("workshop", "-TB1-QB1", "isolator", "–", "32 A 4P, not lockable (gable switch)", "–", "new"),
    ("workshop", "-TB1-BU2", "insulation monitoring device", "–", "900 V, alarm < 50 kΩ", "–", "new"),
    ("workshop", "-TB1-QB2", "DC disconnector", "–", "750 V, 63 A, not for switching under load", "–", "new"),
    ("workshop", "-TB1-QB3", "DC isolator", "–", "800 V, 50 A, DC-PV2 4P", "–", "new"),
    ("workshop", "-TB1-FA1", "DC surge protective device", "–",
     "Ucpv 600 V, Up 2.2 kV, type 2 (T2), In 20 kA, Iscpv 1000 A, leads 0.3 m, to earth ≥ 6 mm² Cu", "–", "new"),
    ("workshop", "-TB1-FC2…4", "string fuse", "–", "6 × 16 A, gPV 600 V, 2 poles fused, Icn 10 kA",
     "-XD1, south roof (outdoors)", "new"),
    ("workshop", "-TB1-FC5", "DC moulded-case circuit-breaker", "–",
     "C 16 A 4P, 800 V, Icn 6 kA, not polarized, suitable for isolation", "–", "new"),
    ("workshop", "-TB1-QA2", "rapid shutdown device", "–", "650 V, In ≥ 13.4 A, operated at the gate", "–", "new"),
    ("workshop", "-TB1-XD3", "plug connector", "–",
     "Un ≥ 352 V, In ≥ 13.4 A, both halves alike, not to be parted under load", "–", "new"),
    ("workshop", "-TB1-RA1", "blocking diode", "–", "700 V, 20 A", "–", "new"),
    ("workshop", "-GB1-FC1", "circuit-breaker", "–",
     "C 16 A 4P, Icn 10 kA, selective up to 820 A, read Zs ≤ 0.958 Ω", "-UC1, switch room", "new"),
    ("workshop", "-GB1", "battery", "Fenwick B8", "8 kWh, 5 kVA, Ib 7.22 A", "switch room", "new"),
    ("workshop", "-GA2", "generator", "Brock G20", "20 kVA, Ib 28.9 A, four-pole change-over switch", "–", "new"),
    ("workshop", "-EZ1", "load", "–", "12 kW, Ib 17.3 A", "–", "existing"),
    ("workshop", "-EZ1-FC1", "circuit-breaker", "–",
     "D 25 A 4P, Icn 10 kA, selective up to 820 A, read Zs ≤ 0.307 Ω", "-UC1, switch room", "existing"),
    ("workshop", "-EZ2", "charging point", "–", "Ib 20 A, 1 phase (parking bay)", "–", "new"),
    ("workshop", "-KF1", "data logger", "Fenwick L1", "", "–", "new"),
    ("workshop", "-TF1", "router", "–", "", "–", "existing"),
    ("workshop", "-KF2", "energy manager", "–", "", "–", "new"),
    ("workshop", "-TF2", "communication module", "–", "", "–", "new"),
    ("workshop", "-XD1", "junction box", "Thornby JB4", "gable box; below the eaves", "south roof (outdoors)", "new"),
    # 30 + 8 + 9 modules; of the cottage 2, 30 and 1 by status
    ("workshop", "47 ×", "PV module", "Firth F310",
     "310 Wp, Uoc 40 V, Isc 10 A, Umpp 33 V, Impp 9.4 A at STC, system ≤ 1500 V, series fuse ≤ 20 A, bifaciality 70 %, "
     "NOCT 45 °C, Uoc +0 %, connectors 30 A, class II", "strings", "new"),
    *(("cottage", count, "PV module", "Firth F310",
       "310 Wp, Uoc 40 V, Isc 10 A, Umpp 33 V, Impp 9.4 A at STC, system ≤ 1000 V taken, not stated",
       "strings", status)
      for count, status in (("2 ×", "new"), ("30 ×", "existing"), ("1 ×", "future"))),
    ("cottage", "-UC1-PG1", "meter", "–", "supply meter, 80 A direct, counts one direction only", "-UC1, hall", "new"),
    ("cottage", "-TB1-PG1", "meter", "–", "generation meter, CT 60/1 A, counts one direction only",
     "-UC1, hall", "new"),
    ("cottage", "-WC2", "AC trunk cable", "–", "≥ 20 A, Ik 2.7 kA, ip 4.05 kA", "–", "new"),
    ("cottage", "-TB1-FA1", "DC surge protective device", "–",
     "Ucpv 550 V, type 1 (T1), Iimp 5 kA, to earth ≥ 16 mm² Cu", "–", "future"),
    ("cottage", "-TB1-XD2", "plug connector", "–",
     "Un ≥ 528 V, In ≥ 25 A, mated with Larch P2, not to be parted under load", "–", "new"),
    ("cottage", "-TB1-FC4", "array fuse", "–", "1 × 25 A, gPV 600 V, 1 pole fused", "–", "new"),
    ("cottage", "-GB1-TA1", "charge converter", "–", "2.5 kW", "hall", "new"),
    ("cottage", "-GB1", "battery", "–", "6 kWh (rack two)", "hall", "new"),
    ("yard", "-TA1", "transformer", "–",
     "250 kVA, uk 4 %, 20 kV / 410 V, Dyn5, 3N PE ~, 400/230 V, TN-C-S, 3 m to the first overcurrent "
     "device, load losses 3.2 kW, high-voltage side: fuses of 16 A", "–", "existing"),
    ("yard", "-TB1…5", "inverter", "Orrin S50", "50 kW, Ib 80 A, DC ≤ 1000 V, MPP 200 to 850 V, galvanic separation",
     "–", "new"),
    ("yard", "-TB1…5-FC2", "DC circuit-breaker", "–",
     "C 20 A 2P, 900 V, Icn 6 kA, not polarized, suitable for isolation", "–", "new"),
    ("yard", "-TB6-FC2", "DC moulded-case circuit-breaker", "–", "In ≥ 15 A 4P, Un ≥ 88 V, polarized", "–", "new"),
    ("ranch", "-UC1-FC1", "moulded-case circuit-breaker", "–", "200 A 2P, AIC 22 kA", "-UC1", "new"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "designation", "device", "product", "ratings", "place", "status"), EQUIPMENT)
def test_equipment(
    spec: str, designation: str, device: str, product: str, ratings: str, place: str, status: str
) -> None:
    """Ratings stand behind make and model, the status behind the place; that a device is new is not told."""
    row = {"Designation": designation, "Device": device, "Make, model; ratings": _behind(product, ratings),
           "Place; status unless new": _behind(place, "" if status == "new" else status)}  # fmt: skip
    assert drawing(spec).row("Equipment schedule", designation) == row


def _behind(first: str, second: str) -> str:
    return ", ".join(each for each in (first, second) if each not in ("–", "")) or first


@pytest.mark.parametrize("spec", ["workshop", "cottage", "ranch", "yard"])
def test_every_device_on_the_drawing_is_in_a_schedule(spec: str) -> None:
    tables = ("String schedule", "Cable schedule", "Equipment schedule", "Earthing conductors")
    listed = {next(iter(row.values())) for table in tables for row in drawing(spec).rows(table)}
    of_inputs = {row["Input"] for row in drawing(spec).rows("String schedule")}
    devices = {name for name in drawing(spec).designations() if name != "-GA1"}  # the network is no equipment
    grouped = {name for name in devices - listed - of_inputs if not _is_in_a_range(name, listed | of_inputs)}
    assert grouped == set()


def _is_in_a_range(name: str, ranges: set[str]) -> bool:
    """Return whether one of the ranges, such as -TB2…4, begins as the name does."""
    return any("…" in each and each.split("…")[0][:-1] in name for each in ranges)


CHANGED = [
    ("dc_residual_current: 6 mA,", "dc_residual_current: 6 mA, ground_fault_protection: true,", "-TB1",
     "arc-fault protection, earth-fault protection of the array, cos φ ≥ 0.8"),
    ("dc_residual_current: 6 mA,", "dc_residual_current: 6 mA, ground_fault_protection: false,", "-TB1",
     "arc-fault protection, no earth-fault protection of the array, cos φ ≥ 0.8"),
    ("    conditional_current: 9 kA", "    conditional_current: 9 kA\n    earthing_system: TT\n"
     "    electrode: {kind: ring, status: existing}", "-UC2", "Icc 9 kA, ring electrode, existing"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "designation", "told"), CHANGED)
def test_more_of_a_device_is_told_in_its_order(old: str, new: str, designation: str, told: str) -> None:
    seen = checked("workshop", (old, new))
    (row,) = [
        row for row in equipment(seen.system, seen.ratings).rows if ENGLISH.say(row[0]).split(",")[0] == designation
    ]
    assert told in ENGLISH.say(row[3])
