"""Grid rules as data: what the network operators of a country ask for, one TOML file a country in `countries/`.

`country("DE")` is the file of Germany, typed and checked; `generic` is EN 50549-1, for where there is none. Every entry
says what it is about, how it is compared, where it was read and when; what it is worth is computed from its sources.
"""

from sld.grid.country import Country
from sld.grid.override import overridden
from sld.grid.read import GENERIC, BadGridFile, country, known

__all__ = ["GENERIC", "BadGridFile", "Country", "country", "known", "overridden", "rules_of"]


def rules_of(code: str | None) -> Country:
    """Return the rules of a country, the generic ones where there are none of it or it is not known which it is."""
    return country(code if code in known() else GENERIC)
