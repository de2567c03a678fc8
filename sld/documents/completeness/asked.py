"""What is asked for, by whom, and which cells or sections answer it.

From published forms, terms and checklists of network operators, permit offices and inspection bodies in thirteen
countries, and from clause 4 of IEC 62446-1 (its items from memory). Which of them a reader asks for differs from place
to place: the list leaves out nothing that one of them asks for and this program can know.
"""

from __future__ import annotations

from sld.frozen import dataclass
from sld.words import Phrase, phrase, phrase_in

__all__ = ["ASKED", "ASKERS", "Asked"]

ASKERS = {
    "operator": phrase_in("who asks", "operator"),
    "permit": phrase_in("who asks", "permit office"),
    "inspection": phrase_in("who asks", "inspector"),
    "owner": phrase_in("who asks", "owner"),
}
_OPERATOR, _PERMIT, _INSPECTION, _OWNER = ASKERS


@dataclass(frozen=True, slots=True)
class Asked:
    """A thing that is asked for.

    by: keys of `ASKERS`. answers: the cells that answer it, as of `Cell.answers`; or document and section: what answers
    it by being there. is_long: the answer is a text to be read where it stands.
    """

    what: Phrase
    by: tuple[str, ...]
    answers: str = ""
    document: str = ""
    section: str = ""
    is_long: bool = False


ASKED: tuple[Asked, ...] = (
    Asked(phrase("Single-line diagram with every source"), (_OPERATOR, _PERMIT, _INSPECTION), document="drawing"),
    Asked(phrase("What to do, and when"), (_OPERATOR,), "", "procedure", "grid_tasks"),
    Asked(phrase("Protection settings"), (_OPERATOR, _INSPECTION), "", "settings", "settings_values"),
    Asked(phrase("Order of isolating"), (_INSPECTION, _OWNER), "", "switching", "isolate_site"),
    Asked(phrase("Notices at the site"), (_PERMIT, _INSPECTION), "", "notices", "notices"),
    Asked(phrase("Address of the site"), (_OPERATOR, _PERMIT), "address"),
    Asked(phrase("Kind of application"), (_OPERATOR,), "application"),
    Asked(phrase("Applicant"), (_OPERATOR, _PERMIT), "applicant"),
    Asked(phrase("Address of the applicant"), (_OPERATOR, _PERMIT), "applicant.address"),
    Asked(phrase("Telephone of the applicant"), (_OPERATOR,), "applicant.phone"),
    Asked(phrase("Account holder, as on the bill"), (_OPERATOR,), "account_holder"),
    Asked(phrase("Account number"), (_OPERATOR,), "account_number"),
    Asked(phrase("Parcel of land"), (_PERMIT,), "parcel_number"),
    Asked(phrase("Day on which the work is to begin"), (_OPERATOR,), "work_begins"),
    Asked(phrase("Day for which the commissioning is planned"), (_OPERATOR,), "commissioning_planned"),
    Asked(phrase("Customer"), (_INSPECTION, _OWNER), "customer"),
    Asked(phrase("Designer"), (_PERMIT, _INSPECTION), "designer"),
    Asked(phrase("Installer"), (_OPERATOR, _INSPECTION), "installer"),
    Asked(phrase("Telephone of the installer"), (_OPERATOR,), "installer.phone"),
    Asked(phrase("Licence of the installer"), (_OPERATOR, _PERMIT), "installer.licence"),
    Asked(phrase("Others with a part in the work"), (_INSPECTION,), "party"),
    Asked(phrase("Network operator"), (_OPERATOR,), "operator"),
    Asked(phrase("Number of the supply point"), (_OPERATOR,), "supply_point"),
    Asked(phrase("Numbers of the meters"), (_OPERATOR, _INSPECTION), "meter_number"),
    Asked(phrase("Directions that the meter at the supply counts"), (_OPERATOR,), "meter_direction"),
    Asked(phrase("Conductors that current transformers are around"), (_OPERATOR,), "ct_lines"),
    Asked(phrase("Contracted power"), (_OPERATOR,), "contracted_power"),
    Asked(phrase("Service fuse"), (_OPERATOR,), "service_fuse"),
    Asked(phrase("Phases and nominal voltage"), (_OPERATOR,), "voltage"),
    Asked(phrase("Earthing system"), (_OPERATOR, _INSPECTION), "earthing_system"),
    Asked(phrase("Fault current at the supply"), (_OPERATOR, _INSPECTION), "fault_current"),
    Asked(phrase("Rated DC power"), (_OPERATOR, _PERMIT), "dc_power"),
    Asked(phrase("Rated AC power"), (_OPERATOR, _PERMIT), "ac_power"),
    Asked(phrase("Highest apparent power"), (_OPERATOR,), "apparent_power"),
    Asked(phrase("Export current a line"), (_OPERATOR,), "export_current"),
    Asked(phrase("Feed-in limit"), (_OPERATOR,), "export_limit"),
    Asked(phrase("What a feed-in limiter does without its meter"), (_OPERATOR,), "fail_safe"),
    Asked(phrase("Highest voltage rise to an inverter"), (_OPERATOR,), "voltage_rise"),
    Asked(phrase("Modules: make and model"), (_OPERATOR, _PERMIT, _INSPECTION), "module"),
    Asked(phrase("Orientation and tilt of the modules"), (_OPERATOR, _PERMIT), "orientation"),
    Asked(phrase("Inverters: make and model"), (_OPERATOR, _PERMIT, _INSPECTION), "inverter"),
    Asked(phrase("Serial numbers of the inverters"), (_OPERATOR, _INSPECTION), "serial_number"),
    Asked(phrase("Firmware of the inverters"), (_OPERATOR,), "firmware"),
    Asked(phrase("Certificate or type test of the inverters"), (_OPERATOR, _INSPECTION), "certificate"),
    Asked(phrase("Network settings of the inverters"), (_OPERATOR, _INSPECTION), "settings"),
    Asked(phrase("Edition of the network settings"), (_OPERATOR,), "settings_edition"),
    Asked(phrase("Points of the characteristics"), (_OPERATOR,), "characteristic"),
    Asked(phrase("Backup output and what it supplies"), (_OPERATOR, _INSPECTION), "backup"),
    Asked(phrase("Batteries: make and model"), (_OPERATOR, _INSPECTION), "battery"),
    Asked(phrase("Serial numbers of the batteries"), (_INSPECTION,), "battery.serial_number"),
    Asked(phrase("Energy of the batteries"), (_OPERATOR,), "battery.energy"),
    Asked(phrase("Connection of the batteries"), (_OPERATOR,), "battery.coupling"),
    Asked(phrase("Equipment with ratings and places"), (_OPERATOR, _INSPECTION), "", "equipment", "equipment"),
    Asked(phrase("Cables with sections, lengths and ways"), (_OPERATOR, _INSPECTION), "", "cables", "cables"),
    Asked(phrase("Strings with modules and inputs"), (_INSPECTION,), "", "strings", "strings"),
    Asked(phrase("Which string is on which input"), (_INSPECTION,), "", "string_plan", "string_plan"),
    Asked(phrase("Designations to be on devices and cables"), (_INSPECTION,), "", "labels", "device_labels"),
    Asked(phrase("Calculation of the ratings"), (_INSPECTION,), document="calculation"),
    Asked(phrase("Deviations and who accepted them"), (_OPERATOR, _INSPECTION), "", "findings", "findings"),
    Asked(phrase("Data sheets of modules and inverters"), (_OPERATOR, _INSPECTION, _OWNER), "paper.data_sheet"),
    Asked(phrase("Manuals of the inverters"), (_INSPECTION, _OWNER), "paper.manual"),
    Asked(phrase("Test results"), (_OPERATOR, _INSPECTION, _OWNER), "paper.test_record"),
    Asked(phrase("Plan of the site"), (_OPERATOR, _PERMIT), "paper.site_plan"),
    Asked(phrase("Plan of the array"), (_PERMIT, _INSPECTION), "paper.array_plan"),
    Asked(phrase("Day of installation"), (_INSPECTION, _OWNER), "installed"),
    Asked(phrase("Day of commissioning"), (_INSPECTION, _OWNER), "commissioned"),
    Asked(phrase("Check of correct operation"), (_INSPECTION, _OWNER), "upkeep.operation", is_long=True),
    Asked(phrase("In the event of a fault"), (_INSPECTION, _OWNER), "upkeep.faults", is_long=True),
    Asked(phrase("Emergency"), (_INSPECTION, _OWNER), "upkeep.emergency", is_long=True),
    Asked(phrase("Maintenance and cleaning"), (_INSPECTION, _OWNER), "upkeep.maintenance", is_long=True),
    Asked(phrase("Works on the building"), (_INSPECTION, _OWNER), "upkeep.building_works", is_long=True),
    Asked(phrase("Warranties"), (_INSPECTION, _OWNER), "warranty"),
    Asked(phrase("Time of discharge of the inverters"), (_INSPECTION, _OWNER), "discharge_time"),
    Asked(phrase("Order of switching on"), (_INSPECTION, _OWNER), "switching_on", is_long=True),
    Asked(phrase("Masses of what is mounted"), (_OWNER,), "mass"),
    Asked(phrase("Clearances to keep free"), (_INSPECTION, _OWNER), "clearances", is_long=True),
    Asked(phrase("Degrees of protection"), (_INSPECTION,), "enclosure"),
    Asked(phrase("Air temperatures for operation"), (_OWNER,), "temperature_range"),
)
"""In the order of a form: who and where, the connection, the sources, the papers, the file of whoever operates it."""
