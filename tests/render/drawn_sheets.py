"""A sheet with every kind of stroke, and texts that break careless writers."""

from __future__ import annotations

from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Polyline, Text

NASTY = (
    'A & B <C> "d" $x$', "']]>", "a\tb\x01c", "  two  blanks ", "−15 °C ≤ 2.5 mm² × 3 Ω µF Δ", "Süd é", "&amp; &#x0;",
    "\ud800 lone", "\ufffe",
)  # fmt: skip

PLAIN = ("-WD1 2 × 6 mm²", "AVA To Ly -Q12", "3N PE ~ 50 Hz 400/230 V", "≤ 30 kW Ω", "Übersicht", "i", "W")

FRAME = ((20.0, 10.0), (410.0, 10.0), (410.0, 287.0), (20.0, 287.0))
WAVE = ((170.0, 30.0), (172.0, 25.0), (174.0, 25.0), (176.0, 30.0), (178.0, 35.0), (180.0, 35.0), (182.0, 30.0))


def sheet(number: int = 1, texts: tuple[str, ...] = PLAIN, width_mm: float = 420.0, height_mm: float = 297.0) -> Sheet:
    strokes = (
        Polyline(((30.0, 30.0), (50.0, 30.0), (50.0, 40.0), (60.0, 45.5))),
        Polyline(((30.0, 50.0), (80.0, 50.0)), 0.35, Dash.DOTTED),
        Polyline(((30.0, 55.0), (80.0, 55.0)), 0.25, Dash.BOUNDARY),
        Polyline(((100.0, 30.0), (110.0, 30.0), (105.0, 40.0)), 0.5, closed=True, fill=Fill.PAPER),
        Circle((120.0, 30.0), 0.6, fill=Fill.INK),
        Arc((130.0, 30.0), 5.0, 2.5, 0.0, 180.0),
        Arc((150.0, 30.0), 5.0, 5.0, -90.0, 30.0, 0.5),
        Curve(WAVE),
    )
    lines = tuple(Text((30.0, 80.0 + 8.0 * n), text, (2.5, 1.8, 5.0)[n % 3]) for n, text in enumerate(texts))
    groups = (
        Group("border", "frame", (Polyline(FRAME, 0.7, closed=True),)),
        Group("-F1", "symbol", strokes, "-F1 fuse\nIn = 16 A", "existing"),
        Group("-F1", "symbol", ()),
        Group("1 & 2", "label", lines),
    )
    return Sheet(width_mm, height_mm, number, f"Title & <{number}>", "Two strings feed one inverter.", "en", groups)
