"""What a pointer resting on a device says: line by line the same as its whole text."""

from __future__ import annotations

from example_specs import SPECS, checked, document

from sld.documents.drawing.hover import hover_texts
from sld.words import ENGLISH

SPEC = next(path for path in SPECS if path.stem == "upper-farm-faulty")


def test_each_text_is_that_of_the_document() -> None:
    """Traces that are the same for several devices are said once; what is drawn once for several says so behind."""
    found = checked(SPEC)
    told = hover_texts(found.system, found.ratings, ())
    shown = {group.key: group.title for sheet in document(SPEC, "drawing").sheets for group in sheet.groups}
    compared = [key for key in found.devices if key in shown]
    assert len(compared) > 20
    for key in compared:
        text = ENGLISH.say(told[key])
        assert shown[key].partition("\ndrawn once for ")[0] == text, key
