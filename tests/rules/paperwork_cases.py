"""Cases of the rules about paperwork: what operators and IEC 62446-1 ask for, left out of a drawing to be handed in."""

from __future__ import annotations

from rule_cases import ADVICE, ISOLATOR, MAIN_SWITCH, METER, REMOVED, SWITCH, UNIT, Case
from systems import Changes

__all__ = ["AT_THE_LIMIT", "FAILING"]

ISSUED = {"project.document_status": "for notification"}
RELAY = {"boards.main.circuit.+": {"kind": "interface_protection"}}
PLACES = {"boards.main.location": "meter room", f"{UNIT}.location": "attic"}
PARTIES = {"customer": "Merren", "designer": {"company": "Merren office"}, "installer": {"company": "Merren works"}}

REVISED = {"index": "B", "change": "Another isolator", "date": "2026-04-02"}

FAILING = (
    Case("PW01", ADVICE, ISSUED, "", ("address of the site",), "give `address` under `project`"),
    Case("PW01", ADVICE, {"drawing.reader": "operator"}, "", ("address of the site",), "give `address`"),
    Case("PW02", ADVICE, ISSUED, "", ("number of the supply point",), "`supply_point` under `supply`"),
    Case("PW03", ADVICE, ISSUED, "", ("no revision",), "`revisions` under `project`"),
    Case("PW04", ADVICE, ISSUED, "", ("`owner`, `drawing_number`, `date`, `drawn_by`",), "under `project`"),
    Case("PW04", ADVICE, {**ISSUED, "project.owner": "Merren", "project.date": "2026-03-02", "project.reference": "7"},
         "", ("empty: `drawn_by`",), "`drawn_by`"),
    Case("PW05", ADVICE, {**ISSUED, f"{METER}.status": "existing"}, METER, ("meter -UC1-PG1",), "give `number`"),
    Case("PW06", ADVICE, ISSUED, UNIT, ("inverter type twelve",), "`make`"),
    Case("PW06", ADVICE, ISSUED, f"{UNIT}.inputs.0.strings.0", ("module type mono",), "`make`"),
    Case("PW07", ADVICE, ISSUED, ISOLATOR, ("isolator -TB1-QB1",), "`location`"),
    Case("PW07", ADVICE, {**ISSUED, "boards.main.location": "meter room"}, SWITCH, ("DC isolator",), "`location`"),
    Case("PW07", ADVICE, {**ISSUED, f"{UNIT}.location": "attic"}, MAIN_SWITCH, ("main switch",), "`location`"),
    Case("PW08", ADVICE, ISSUED, UNIT, ("network setting of inverter -TB1",), "`network_settings`"),
    Case("PW08", ADVICE, {**ISSUED, **RELAY}, "boards.main.circuit.3", ("interface protection",), "`settings`"),
    Case("PW09", ADVICE, ISSUED, "", ("`customer`, `designer`, `installer`",), "under `project`"),
    Case("PW10", ADVICE, {"project.document_status": "As-built"}, "", ("`installed`, `commissioned`",), "`project`"),
    Case("PW11", ADVICE, ISSUED, "", ("network operator",), "`operator` under `supply`"),
    Case("PW12", ADVICE, {**ISSUED, "supply.service_fuse": REMOVED}, "", ("operator's part ends",), "`service_fuse`"),
    Case("PW15", ADVICE, {"project.revisions": [REVISED | {"places": ["inverters.rof"]}]}, "",
         ("revision B", "inverters.rof"), "correct the entry"),
    # an older revision is asked too: its places are told when the newest one goes
    Case("PW15", ADVICE, {"project.revisions": [REVISED | {"places": ["-TB1", "-TB9"]}, REVISED]}, "", ("-TB9",),
         "entry"),
)  # fmt: skip

COMPLETE: Changes = {
    **ISSUED,
    **PLACES,
    "project.address": "1 Mill Green",
    "project.owner": "Merren office",
    "project.drawing_number": "M-1",
    "project.drawn_by": "DO",
    "project.revisions": [{"index": "A", "change": "First issue", "date": "2026-03-02"}],
    **{f"project.{key}": value for key, value in PARTIES.items()},
    "supply.supply_point": "MV 1",
    "supply.operator": "Merren network",
    "supply.ownership_boundary": "network",
    f"{METER}.status": "existing",
    f"{METER}.number": "88 214",
    "types.inverters.twelve.make": "Tarnholt",
    "types.modules.mono.make": "Brightfell",
    f"{UNIT}.grid_code": "Merren LV 2024",
}


def without(key: str) -> Changes:
    """Return the complete paperwork but for one key."""
    return {each: value for each, value in COMPLETE.items() if each != key}


BUILT = {**COMPLETE, "project.document_status": "as built", "project.installed": "2026-05-01"}

AT_THE_LIMIT: tuple[tuple[str, Changes], ...] = (
    *((f"PW{number:02}", COMPLETE) for number in range(1, 13)),
    # a sketch needs no paperwork, and what says nothing of its purpose is one
    *((f"PW{number:02}", {"project.document_status": "Draft 2"}) for number in range(1, 13)),
    *((f"PW{number:02}", {}) for number in range(1, 13)),
    # a service fuse, and a transformer of the site, leave nothing open
    ("PW12", {**without("supply.ownership_boundary"), "supply.service_fuse": 50}),
    ("PW12", {**without("supply.ownership_boundary"),
              "supply.transformer": {"rated_power": "250 kVA", "primary_voltage": "20 kV",
                                     "short_circuit_voltage": "4 %"}}),
    ("PW05", {**without(f"{METER}.number"), f"{METER}.status": "new"}),
    ("PW07", {**without("boards.main.location"), f"{MAIN_SWITCH}.location": "hall"}),
    ("PW08", {**without(f"{UNIT}.grid_code"), f"{UNIT}.network_settings": {"set": "Merren LV 2024"}}),
    ("PW08", {**without(f"{UNIT}.grid_code"),
              "boards.main.circuit.+": {"kind": "interface_protection", "settings": "Merren LV 2024"}}),
    ("PW10", {**BUILT, "project.commissioned": "2026-05-08"}),
    # a device by path and by designation, a block around devices, a chain, an earthing conductor, the whole terminal
    *(("PW15", {"project.revisions": [REVISED | {"places": [place]}]})
      for place in ("inverters.roof", "-TB1", "inverters.roof.inputs", "inverters.roof.inputs[0]", "supply",
                    "data.chains.bus", "-WF1", "-XE1", "earthing", "boards.main")),
)  # fmt: skip
