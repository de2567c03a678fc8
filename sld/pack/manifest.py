"""The manifest of a pack: digests of its files, versions, and the system with its ratings and findings as plain data.

A later version of this program, or another program, compares two packs by it, without this version and the spec.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import sld
from sld.documents.contents import Entry
from sld.finding import Finding
from sld.model.system import System
from sld.pack.pack import Pack
from sld.pack.plain import plain
from sld.quantity import Rating
from sld.steps import Ratings
from sld.tables.versions import versions

__all__ = ["MANIFEST_NAME", "manifest"]

MANIFEST_NAME = "manifest.json"
SCHEMA = 1

_NOT_OF_THE_SYSTEM = (
    "point", "others", "kinds", "names", "drawing", "unusual", "assumptions", "devices", "copies", "whole", "firsts",
    "walked",
)  # fmt: skip
"""What is told elsewhere in the manifest, or is no fact of the installation."""


def manifest(
    packed: Pack,
    parts: Sequence[tuple[System, Ratings]],
    findings: Sequence[Finding],
    files: Mapping[str, bytes],
    read: Mapping[str, bytes],
) -> bytes:
    """Return the manifest as it is written.

    parts: the system behind each supply point with its ratings. files: of the pack, without it. read: the files that it
    was made from.
    """
    first, *further = [_part(*part) for part in parts]
    document = {
        "schema": SCHEMA,
        "made_by": {"program": "sld", "version": sld.__version__},
        "purpose": packed.purpose,
        "documents": [_document(each) for each in packed.contents.entries],
        "files": {name: _digest(content) for name, content in sorted(files.items())},
        "read": {name: _digest(content) for name, content in sorted(read.items())},
        "tables": versions(),
        "findings": [_finding(each) for each in findings],
        **first,
        **({"further_supply_points": further} if further else {}),
    }
    return json.dumps(document, indent=1, ensure_ascii=False).encode() + b"\n"


def _part(system: System, ratings: Ratings) -> dict[str, Any]:
    return {
        "assumptions": [plain(each.what) for each in system.assumptions],
        "system": _system(system),
        "ratings": _ratings(ratings),
    }


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _document(entry: Entry) -> dict[str, Any]:
    title = entry.document.title
    return {
        "name": entry.document.name,
        "number": title.identification_number,
        "revision": title.revision_index,
        "page": entry.first_page,
        "pages": entry.pages_count,
    }


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "code": finding.code,
        "severity": finding.severity.name,
        "device": finding.device,
        "at": _path(finding.at),
        "message": plain(finding.message),
        "remedy": plain(finding.remedy),
        "accepted": plain(finding.accepted),
    }


def _path(at: Iterable[str | int]) -> str:
    return ".".join(map(str, at))


def _system(system: System) -> dict[str, Any]:
    """Return the resolved system: every device with all that is known of it, its types written out."""
    whole = {
        name: plain(getattr(system, name))
        for name in type(system).__dataclass_fields__
        if name not in _NOT_OF_THE_SYSTEM
    }
    whole["devices"] = [
        {**plain(each), "class": type(each).__name__, "at": _path(each.at)} for each in system.devices.values()
    ]
    return whole


def _ratings(ratings: Ratings) -> dict[str, Any]:
    """Return the ratings by the key of their device, empty for the whole system, and by symbol."""
    return {
        key: {symbol.name: _rating(rating) for symbol, rating in ratings.by_symbol(key).items()}
        for key in ratings.rated()
    }


def _rating(rating: Rating) -> dict[str, Any]:
    return {
        "symbol": rating.symbol.printed,
        "value": rating.value,
        "unit": rating.unit,
        "origin": rating.origin.value,
        "formula": plain(rating.formula),
        "inputs": [
            {"symbol": each.name, "value": plain(each.value), "unit": each.unit, "from": plain(each.origin)}
            for each in rating.given
        ],
        "clause": plain(rating.clause),
        "table_row": plain(rating.table_row),
        "assumptions": plain(rating.assumptions),
    }
