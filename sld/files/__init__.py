"""The files of a drawing into a folder: all or none, over nobody else's, and sheets that are no more cleared away.

The folder keeps records of whose each file is (`record.py`); where there is none a file may say of itself what it is
(`marks.py`). New files are written beside the old ones and switched together (`switch.py`).
"""

from __future__ import annotations

from sld.files.before import drawn_before
from sld.files.put import put
from sld.files.record import RECORD_NAME, Drawing, Made, drawing_of, record_name, seen_from
from sld.files.refuse import Identity, Refusal, Refused, identities
from sld.files.whole import Growing, write_whole

__all__ = [
    "RECORD_NAME", "Drawing", "Growing", "Identity", "Made", "Refusal", "Refused", "drawing_of", "drawn_before",
    "identities", "put", "record_name", "seen_from", "write_whole",
]  # fmt: skip
