"""What a country asks for: documents to hand in, and points that the diagram has to show."""

from __future__ import annotations

from enum import Enum

from sld.words import Phrase, phrase

__all__ = ["Paper", "Point"]


class Paper(Enum):
    """A document that is handed in."""

    SINGLE_LINE_DIAGRAM = "single_line_diagram"
    THREE_LINE_DIAGRAM = "three_line_diagram"
    SITE_PLAN = "site_plan"
    POSITION_PLAN = "position_plan"
    FIRE_SERVICE_PLAN = "fire_service_plan"
    TIMETABLE = "timetable"
    HEADS_OF_TERMS = "heads_of_terms"
    DATA_SHEETS = "data_sheets"
    GENERATION_DATA = "generation_data"
    STORAGE_DATA = "storage_data"
    UNIT_CERTIFICATE = "unit_certificate"
    PROTECTION_CERTIFICATE = "protection_certificate"
    PROTECTION_SETTINGS = "protection_settings"
    METERING_CONCEPT = "metering_concept"
    AUTHORISATION = "authorisation"
    INSTALLER_STATEMENT = "installer_statement"
    IDENTITY = "identity"
    CADASTRAL_DATA = "cadastral_data"
    PHOTOS = "photos"
    OPERATING_PHILOSOPHY = "operating_philosophy"
    MANUAL = "manual"
    INSPECTION_REPORT = "inspection_report"
    COMMISSIONING_RECORD = "commissioning_record"
    LABELS = "labels"
    TECHNICAL_FILE = "technical_file"

    @property
    def phrase(self) -> Phrase:
        """Return what it is called."""
        return _PAPERS[self]


_PAPERS = {
    Paper.SINGLE_LINE_DIAGRAM: phrase("Single-line diagram"),
    Paper.THREE_LINE_DIAGRAM: phrase("Three-line diagram"),
    Paper.SITE_PLAN: phrase("Site plan"),
    Paper.POSITION_PLAN: phrase("Position plan of the electrical equipment"),
    Paper.FIRE_SERVICE_PLAN: phrase("Plan for the fire service"),
    Paper.TIMETABLE: phrase("Timetable"),
    Paper.HEADS_OF_TERMS: phrase("Heads of terms for the land"),
    Paper.DATA_SHEETS: phrase("Data sheets of modules and inverters"),
    Paper.GENERATION_DATA: phrase("Data sheet of the generating plant, on the operator's form"),
    Paper.STORAGE_DATA: phrase("Data sheet of the storage, on the operator's form"),
    Paper.UNIT_CERTIFICATE: phrase("Certificate or type-test reference of each inverter"),
    Paper.PROTECTION_CERTIFICATE: phrase("Certificate of the interface protection"),
    Paper.PROTECTION_SETTINGS: phrase("Settings of the interface protection"),
    Paper.METERING_CONCEPT: phrase("Choice of the metering concept"),
    Paper.AUTHORISATION: phrase("Authorisation by the customer"),
    Paper.INSTALLER_STATEMENT: phrase("Statement of the installer, with licence"),
    Paper.IDENTITY: phrase("Identity document of the applicant"),
    Paper.CADASTRAL_DATA: phrase("Cadastral data of the site"),
    Paper.PHOTOS: phrase("Photographs"),
    Paper.OPERATING_PHILOSOPHY: phrase("Description of how it operates"),
    Paper.MANUAL: phrase("Manuals and instructions"),
    Paper.INSPECTION_REPORT: phrase("Report of the inspection"),
    Paper.COMMISSIONING_RECORD: phrase("Commissioning record"),
    Paper.LABELS: phrase("List of labels"),
    Paper.TECHNICAL_FILE: phrase("Technical file with a description of the inverter"),
}


class Point(Enum):
    """Something that the diagram, or a list beside it, has to show."""

    SUPPLY_POINT = "supply_point"
    OWNERSHIP_BOUNDARY = "ownership_boundary"
    METERS = "meters"
    MAIN_SWITCH = "main_switch"
    SERVICE_FUSE = "service_fuse"
    ALL_SOURCES = "all_sources"
    PROTECTIVE_DEVICES = "protective_devices"
    CABLES = "cables"
    MEASURING = "measuring"
    EARTHING = "earthing"
    ISOLATION = "isolation"
    INTERFACE_PROTECTION = "interface_protection"
    LINES = "lines"
    STORAGE = "storage"
    STRINGS = "strings"
    SHUTDOWN = "shutdown"
    BUSBARS = "busbars"

    @property
    def phrase(self) -> Phrase:
        """Return what it is called."""
        return _POINTS[self]


_POINTS = {
    Point.SUPPLY_POINT: phrase("Supply point with its number"),
    Point.OWNERSHIP_BOUNDARY: phrase("Boundary of ownership"),
    Point.METERS: phrase("Meters with their numbers"),
    Point.MAIN_SWITCH: phrase("Main switch with its rated current"),
    Point.SERVICE_FUSE: phrase("Service fuse"),
    Point.ALL_SOURCES: phrase("Every source, existing and new"),
    Point.PROTECTIVE_DEVICES: phrase("Protective devices with their ratings"),
    Point.CABLES: phrase("Cables with section and length"),
    Point.MEASURING: phrase("Measuring, control and communication"),
    Point.EARTHING: phrase("Earthing system and electrode"),
    Point.ISOLATION: phrase("Isolators, where they are, whether they lock"),
    Point.INTERFACE_PROTECTION: phrase("Interface protection and what it opens"),
    Point.LINES: phrase("Line of each single-phase inverter"),
    Point.STORAGE: phrase("Storage and how it is coupled"),
    Point.STRINGS: phrase("Modules and strings"),
    Point.SHUTDOWN: phrase("Shutdown of the array and from where it is worked"),
    Point.BUSBARS: phrase("Busbar ratings and the place of the breaker"),
}
