"""Whether a file that nobody named is a spec, told by the keys at its top level without reading the rest."""

from __future__ import annotations

import re
from pathlib import Path

from sld.spec.span import UnusableText
from sld.spec.text import decode, load

__all__ = ["REQUIRED", "is_spec"]

REQUIRED = frozenset({"project", "site", "supply", "inverters"})
"""The keys without which there is no spec; the types of all keys are not loaded for them."""

_KEY = re.compile(r"""^["']?(\w+)["']?\s*:""", re.MULTILINE)
_KEY_IN_BRACES = re.compile(r"""[{,]\s*["']?(\w+)["']?\s*:""")


def is_spec(path: Path) -> bool:
    """Return whether a file has one of the keys that every spec has; a types file has none.

    A file that cannot be read counts as a spec: whoever reads it then says why.
    """
    try:
        text = decode(load(path, str(path)), str(path))
    except UnusableText:
        return True
    found = (_KEY_IN_BRACES if text.lstrip().startswith("{") else _KEY).finditer(text)
    return any(each[1] in REQUIRED for each in found)
