"""What a pointer resting on a device says: line by line the same as its whole text."""

from __future__ import annotations

from example_specs import SPECS, checked, document

from sld.documents.document import Document, Metadata
from sld.documents.drawing.hover import hover_texts
from sld.documents.title import TitleBlock
from sld.layout.plan import PlacedCell, Plan
from sld.sheet import hovered
from sld.symbols.stroke import Box
from sld.words import ENGLISH, phrase

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


def test_a_pointer_rests_on_a_symbol_that_no_line_leads_to() -> None:
    alone = PlacedCell("TF1", "logger", "new", (5.0, 5.0), (0.0, 0.0), Box(0.0, 0.0, 10.0, 10.0), (), ())
    plan = Plan(20.0, 20.0, (alone,), (), (), (), (), ())
    title = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker", language=ENGLISH)
    told = {"TF1": phrase("cable"), "TF2": phrase("inverter")}
    made = Document("drawing", title, (), ENGLISH, Metadata("", (), ""), phrase("system"), "A3", hover=told)
    assert hovered.hover_texts(made, [plan]) == {"TF1": "cable"}
