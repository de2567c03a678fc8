"""What a format needs and this machine lacks, told with the line to type."""

from __future__ import annotations

import sys

__all__ = ["MissingCairo", "MissingEzdxf", "MissingLibrary", "MissingOpenpyxl", "MissingScripts", "UnknownLetters"]


class MissingLibrary(RuntimeError):  # noqa: N818 - it says what is the matter
    """A library that a format needs is not installed; SVG needs nothing of the kind."""


class MissingCairo(MissingLibrary):
    """The library that writes PDF and PNG is not installed."""

    def __init__(self) -> None:
        super().__init__("PDF and PNG need the cairo library; on Debian and Ubuntu: sudo apt-get install -y libcairo2")


class MissingEzdxf(MissingLibrary):
    """The library that writes DXF is not installed."""

    def __init__(self) -> None:
        super().__init__(f"DXF needs the library ezdxf: {sys.executable} -m pip install 'ezdxf>=1.3,<2'")


class MissingOpenpyxl(MissingLibrary):
    """The library that writes XLSX is not installed."""

    def __init__(self) -> None:
        super().__init__(f"XLSX needs the library openpyxl: {sys.executable} -m pip install 'openpyxl>=3.1,<4'")


class MissingScripts(MissingLibrary):
    """The libraries that put Hebrew and Arabic letters in order are not installed."""

    def __init__(self) -> None:
        super().__init__(
            "Hebrew and Arabic text needs the libraries python-bidi and arabic-reshaper, or it would stand in the "
            f"wrong order: {sys.executable} -m pip install 'python-bidi>=0.6' 'arabic-reshaper>=3'; "
            "or write it in Latin letters"
        )


class UnknownLetters(ValueError):  # noqa: N818 - it says what is the matter
    """Text has letters that the font of the sheets lacks, as Chinese, Japanese and Korean ones."""

    def __init__(self, letters: str) -> None:
        super().__init__(
            f"the font of the sheets has no {' '.join(letters)}, so nothing can be drawn for it; write this text in "
            "letters that it has: Latin, Greek, Cyrillic, Hebrew, Arabic, Armenian, Georgian; or name a font that has "
            "these: `font` under `drawing`"
        )
        self.letters = letters

    def __reduce__(self) -> tuple[type[UnknownLetters], tuple[str]]:
        return (UnknownLetters, (self.letters,))
