"""Notices that a country asks for at the site: what each is about, where it stands, and which data it needs.

The wording of a notice is that of its standard and is not given here.
"""

from __future__ import annotations

from enum import Enum
from typing import Annotated

from pydantic import Field

from sld.grid.entry import Condition, Entry
from sld.words import Phrase, phrase

__all__ = ["AskedNotice", "Datum", "Notice", "Site"]


class Notice(Enum):
    """What a notice is about."""

    PV_PRESENT = "pv_present"
    LIVE_PARTS = "live_parts"
    SEVERAL_SOURCES = "several_sources"
    ON_DISPLAY = "on_display"
    DC_ISOLATOR = "dc_isolator"
    NOT_UNDER_LOAD = "not_under_load"
    PV_CONDUCTORS = "pv_conductors"
    FIRE_PLAN = "fire_plan"
    FIRE_CUT_OFF = "fire_cut_off"
    FIRE_SIGN = "fire_sign"
    SHUTDOWN_PROCEDURE = "shutdown_procedure"
    ARRAY_STAYS_LIVE = "array_stays_live"
    SEVERAL_DC_ISOLATORS = "several_dc_isolators"
    HAZARDOUS_DC = "hazardous_dc"
    BACKUP = "backup"
    INVERTER_PLACE = "inverter_place"
    RAPID_SHUTDOWN = "rapid_shutdown"
    HIGHEST_DC_VOLTAGE = "highest_dc_voltage"
    BOTH_SIDES_LIVE = "both_sides_live"
    AC_OUTPUT = "ac_output"
    DIRECTORY = "directory"
    BREAKER_STAYS = "breaker_stays"
    CLEAR_ISOLATOR = "clear_isolator"

    @property
    def phrase(self) -> Phrase:
        """Return what it says, in our words."""
        return _NOTICES[self]


_NOTICES = {
    Notice.PV_PRESENT: phrase("There is a PV system"),
    Notice.LIVE_PARTS: phrase("Parts inside may stay live after isolation"),
    Notice.SEVERAL_SOURCES: phrase("Several sources: isolate all of them"),
    Notice.ON_DISPLAY: phrase("Diagram, settings, contact and shutdown procedure on display"),
    Notice.DC_ISOLATOR: phrase("DC isolator of the PV array; live in daylight"),
    Notice.NOT_UNDER_LOAD: phrase("Always live; not to be opened under load"),
    Notice.PV_CONDUCTORS: phrase("Conductors of the PV array"),
    Notice.FIRE_PLAN: phrase("Plan for the fire service"),
    Notice.FIRE_CUT_OFF: phrase("Cut-off for the fire service"),
    Notice.FIRE_SIGN: phrase("Sign for the fire service"),
    Notice.SHUTDOWN_PROCEDURE: phrase("Shutdown procedure"),
    Notice.ARRAY_STAYS_LIVE: phrase("Isolators do not make the array dead"),
    Notice.SEVERAL_DC_ISOLATORS: phrase("Several DC sources: open all isolators"),
    Notice.HAZARDOUS_DC: phrase("Hazardous DC voltage"),
    Notice.BACKUP: phrase("Live without the network: backup supply"),
    Notice.INVERTER_PLACE: phrase("Place of the inverters, main switches by source"),
    Notice.RAPID_SHUTDOWN: phrase("Rapid shutdown, and from where it is initiated"),
    Notice.HIGHEST_DC_VOLTAGE: phrase("Highest DC voltage"),
    Notice.BOTH_SIDES_LIVE: phrase("May be live on both sides when open"),
    Notice.AC_OUTPUT: phrase("Rated AC current and voltage"),
    Notice.DIRECTORY: phrase("Directory of all disconnecting means"),
    Notice.BREAKER_STAYS: phrase("Breaker of the source not to be moved"),
    Notice.CLEAR_ISOLATOR: phrase("Isolator, recognisable for laymen"),
}


class Site(Enum):
    """Where a notice stands: at devices of a kind, or at a place that no device is."""

    ORIGIN = "origin"
    METERS = "meters"
    BOARDS = "boards"
    AC_ISOLATORS = "ac_isolators"
    DC_ISOLATORS = "dc_isolators"
    DC_BOXES = "dc_boxes"
    INVERTERS = "inverters"
    INVERTERS_SEVERAL_DC = "inverters_several_dc"
    DC_CABLES = "dc_cables"
    BACKUP_BOARDS = "backup_boards"
    BUSBAR_SUM = "busbar_sum"
    SHUTDOWN = "shutdown"
    BATTERIES = "batteries"
    ENTRANCE = "entrance"
    """The entrance of the building."""


class Datum(Enum):
    """What a notice has to say of this installation."""

    DC_VOLTAGE = "dc_voltage"
    AC_CURRENT = "ac_current"
    DC_ISOLATORS = "dc_isolators"
    SOURCES = "sources"
    DISCONNECTORS = "disconnectors"


class AskedNotice(Entry):
    """A notice that is asked for. at: where. data: what it says. when: as of a limit."""

    notice: Notice
    at: Annotated[tuple[Site, ...], Field(min_length=1)]
    data: tuple[Datum, ...] = ()
    when: tuple[Condition, ...] = ()
