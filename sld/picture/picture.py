"""What a picture is once it was read: dots, or shapes in the picture's own units."""

from __future__ import annotations

from dataclasses import dataclass

from sld.symbols.stroke import Point

__all__ = ["BadPicture", "Dots", "Picture", "Segment", "Shape", "Shapes"]

Segment = tuple[str, tuple[Point, ...]]
"""("M", one point), ("L", one point), ("C", three points) or ("Z", none), as in the path of an SVG."""


class BadPicture(ValueError):  # noqa: N818 - it says what is the matter
    """A file that cannot be used as a picture: why, and what to do."""

    def __init__(self, reason: str, remedy: str) -> None:
        super().__init__(reason)
        self.reason, self.remedy = reason, remedy


@dataclass(frozen=True, slots=True)
class Dots:
    """Rows of dots from the top, three bytes a dot: red, green, blue, on white."""

    columns_count: int
    rows_count: int
    rgb: bytes

    @property
    def aspect_factor(self) -> float:
        """Return width by height."""
        return self.columns_count / self.rows_count


@dataclass(frozen=True, slots=True)
class Shape:
    """A path with its inks as `#rrggbb`, empty for none.

    line_width_px: of the outline. even_odd: the rule by which a path that crosses itself is filled.
    """

    path: tuple[Segment, ...]
    fill: str
    line: str
    line_width_px: float
    even_odd: bool


@dataclass(frozen=True, slots=True)
class Shapes:
    """Shapes from the lowest up, from (0, 0) to (width_px, height_px) in the picture's own units, y down."""

    width_px: float
    height_px: float
    shapes: tuple[Shape, ...]

    @property
    def aspect_factor(self) -> float:
        """Return width by height."""
        return self.width_px / self.height_px


Picture = Dots | Shapes
