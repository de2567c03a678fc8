"""What a picture is once it was read: dots."""

from __future__ import annotations

from sld.frozen import dataclass

__all__ = ["BadPicture", "Picture"]


class BadPicture(ValueError):  # noqa: N818 - it says what is the matter
    """A file that cannot be used as a picture: why, and what to do."""

    def __init__(self, reason: str, remedy: str) -> None:
        super().__init__(reason)
        self.reason, self.remedy = reason, remedy


@dataclass(frozen=True, slots=True)
class Picture:
    """Rows of dots from the top, three bytes a dot: red, green, blue, on white."""

    columns_count: int
    rows_count: int
    rgb: bytes

    @property
    def aspect_factor(self) -> float:
        """Return width by height."""
        return self.columns_count / self.rows_count
