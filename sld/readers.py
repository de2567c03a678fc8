"""Who reads: a reading is a choice of documents, sections and roles of label lines, in one place.

Ratings of devices, sections, lengths and settings stay for every reader, because all need them; so does what can
kill: the highest DC voltage, and a limit that is exceeded. A crew needs no computed currents, a network operator no
addresses.
"""

from __future__ import annotations

from enum import Enum, auto

from sld.frozen import dataclass
from sld.words import Phrase, phrase

__all__ = ["PURPOSES", "READERS", "Purpose", "Reader", "Role"]


class Role(Enum):
    """What a line of a label is for; readers, folding and the overview choose lines by it.

    COUNT: of how many equal branches one is drawn. SUM: what one of them and all of them come to. NAME: what a device
    is called besides its designation. SUPPLY: kind and voltage of a supply. RATED: what is stated or chosen. TYPE: of a
    cable. CONDUCTORS: of a cable, with its length. COMPUTED: a current that somebody computed. STRESS: one that what is
    there must withstand. LIMIT: what a computed value is held against. DANGER: a voltage that can kill, or a limit that
    is exceeded. SETTING: what is set or operated. NUMBER: of a meter, of a supply point. ROUTE: of a cable, in the
    words of those who lay it. ADDRESS: of a device on a data bus.
    """

    COUNT = auto()
    SUM = auto()
    DESIGNATION = auto()
    NAME = auto()
    PRODUCT = auto()
    SUPPLY = auto()
    RATED = auto()
    TYPE = auto()
    CONDUCTORS = auto()
    COMPUTED = auto()
    STRESS = auto()
    LIMIT = auto()
    DANGER = auto()
    SETTING = auto()
    NUMBER = auto()
    PLACE = auto()
    ROUTE = auto()
    ADDRESS = auto()
    STATUS = auto()
    LINK = auto()
    REFERENCE = auto()

    __hash__ = object.__hash__  # that of `Enum` is called in Python, for each line that is asked for again


@dataclass(frozen=True, slots=True)
class Purpose:
    """What a pack of documents is for.

    reader: of its drawing. documents: in it, in their order, between the cover and the list of what is asked for.
    askers: whose questions are on that list, by the words of `sld.documents.completeness`; none where it has no list.
    """

    title: Phrase
    reader: str
    documents: tuple[str, ...]
    askers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Reader:
    """Somebody for whom documents are made.

    title: what the drawing is called. documents: those made for this reader. sections: of the drawing that are left
    out. roles: of the lines at the symbols that are left out. notes: what the drawing says of all that is left out.
    """

    title: Phrase
    documents: tuple[str, ...]
    sections: frozenset[str]
    roles: frozenset[Role]
    notes: tuple[Phrase, ...] = ()


_FILE = ("particulars", "upkeep", "papers")
"""What belongs to the file of an installation."""

_SCHEDULES = ("equipment", "cables", "strings", "string_plan", "labels")

READERS: dict[str, Reader] = {
    "full": Reader(
        title=phrase("Single-line diagram"),
        documents=(
            "drawing",
            "calculation",
            "procedure",
            "settings",
            "switching",
            "notices",
            *_SCHEDULES,
            "findings",
            *_FILE,
        ),
        sections=frozenset({"review"}),  # repeats what the rest has
        roles=frozenset({Role.ROUTE}),
    ),
    "operator": Reader(
        title=phrase("Single-line diagram for review"),
        documents=(
            "drawing",
            "calculation",
            "procedure",
            "settings",
            "switching",
            "notices",
            *_SCHEDULES,
            "findings",
            *_FILE,
        ),
        sections=frozenset(
            {
                "summary",
                "insulation_test",
                "terminals",
                "data_bus",
                "strings",
                "cables",
                "equipment",
                "earthing",
            }
        ),
        roles=frozenset({Role.ROUTE, Role.ADDRESS}),
        notes=(
            phrase(
                "This reading is for the network operator: terminals, routes, torques and the data bus are left out; "
                "the schedules are documents of their own."
            ),
        ),
    ),
    "crew": Reader(
        title=phrase("Single-line diagram for wiring"),
        documents=("drawing", "switching", "notices", *_SCHEDULES, "findings", *_FILE),
        sections=frozenset({"review"}),
        roles=frozenset({Role.COMPUTED, Role.LIMIT}),
        notes=(
            phrase(
                "This reading is for those who wire: computed currents and limits at the symbols and the formulas "
                "behind the ratings are left out."
            ),
        ),
    ),
}
"""By the word of the spec and of the command line."""

_ALL = (
    "particulars",
    "settings",
    "drawing",
    "calculation",
    *_SCHEDULES,
    "findings",
    "switching",
    "notices",
    "upkeep",
    "papers",
)
"""What those get who test the installation, and those who take it over."""

PURPOSES: dict[str, Purpose] = {
    "notify": Purpose(
        phrase("For notification"),
        "operator",
        ("procedure", "particulars", "settings", "drawing", "equipment", "findings", "papers"),
        ("operator", "permit"),
    ),
    "build": Purpose(
        phrase("For construction"),
        "crew",
        ("drawing", *_SCHEDULES, "findings", "switching", "notices", "upkeep", "papers"),
        (),
    ),
    "test": Purpose(
        phrase("For inspection and test"),
        "full",
        _ALL,
        ("inspection",),
    ),
    "handover": Purpose(
        phrase("For handover"),
        "full",
        _ALL,
        ("operator", "permit", "inspection", "owner"),
    ),
}
"""By the word of the command line."""
