"""From one typed text spec of a photovoltaic system to a checked, annotated single-line diagram.

From Python, here with a spec of this repository:

>>> import sld
>>> hall = sld.load("specs/village-hall.yaml")
>>> print(hall.rating("-TB1-WD1", "Iz"))
Iz = 24 A
>>> drawing = hall.draw(paper="A3")
>>> drawing.svg(sheet=1)[:38]
'<?xml version="1.0" encoding="UTF-8"?>'

Importing it loads nothing else of the package: what a name needs is imported when the name is first used.
"""

TYPE_CHECKING = False  # as type checkers know it; to import it from typing takes longer than all the rest here

if TYPE_CHECKING:
    from sld.door.design import Design
    from sld.door.document import Document, Saved
    from sld.door.load import load
    from sld.files import Refused
    from sld.finding import Finding, Severity
    from sld.quantity import Rating
    from sld.ratings.symbol import Symbol
    from sld.render.missing import MissingLibrary
    from sld.spec import Unusable
else:

    def __getattr__(name: str) -> object:
        """Import a public name when it is first asked for (PEP 562). Raises AttributeError for another one."""
        from importlib import import_module

        if name not in _HOMES:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        found = globals()[name] = getattr(import_module(_HOMES[name]), name)
        return found

    def __dir__() -> list[str]:
        return sorted({*globals(), *__all__})


__all__ = [
    "Design", "Document", "Finding", "MissingLibrary", "Rating", "Refused", "Saved", "Severity", "Symbol", "Unusable",
    "__version__", "load",
]  # fmt: skip

__version__ = "0.2.0"

_HOMES = {
    "Design": "sld.door.design",
    "Document": "sld.door.document",
    "Finding": "sld.finding",
    "MissingLibrary": "sld.render.missing",
    "Rating": "sld.quantity",
    "Refused": "sld.files",
    "Saved": "sld.door.document",
    "Severity": "sld.finding",
    "Symbol": "sld.ratings.symbol",
    "Unusable": "sld.spec",
    "load": "sld.door.load",
}
"""Where each public name is defined."""
