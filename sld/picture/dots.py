"""PNG -> dots, after the PNG specification (W3C, second edition; ISO/IEC 15948:2003). Interlaced files are refused."""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain

from sld.picture.picture import BadPicture, Dots

__all__ = ["MAX_DOTS", "read_png"]

MAX_DOTS = 300_000
"""About 20 dots to a millimetre of the box on the sheet, more than a printer has; more would only make files heavy."""

_AGAIN = "open it in a picture program and save it again as PNG"
_CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}
_DEPTHS = {0: (1, 2, 4, 8, 16), 2: (8, 16), 3: (1, 2, 4, 8), 4: (8, 16), 6: (8, 16)}


@dataclass(frozen=True, slots=True)
class _Header:
    columns_count: int
    rows_count: int
    depth: int
    kind: int

    @property
    def row_bytes(self) -> int:
        return (self.columns_count * self.depth * _CHANNELS[self.kind] + 7) // 8

    @property
    def step_bytes(self) -> int:
        """Return how far apart the bytes of neighbouring dots are; one where a byte holds several dots."""
        return max(1, self.depth * _CHANNELS[self.kind] // 8)


def _chunks(content: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Yield name and data of each chunk. Raises BadPicture where one is cut off or damaged."""
    at = 8
    while at < len(content):
        length, name = int.from_bytes(content[at : at + 4]), content[at + 4 : at + 8]
        data, check = content[at + 8 : at + 8 + length], content[at + 8 + length : at + 12 + length]
        if len(data) < length or len(check) < 4 or int.from_bytes(check) != zlib.crc32(name + data):
            raise BadPicture("the PNG is damaged", _AGAIN)
        yield name, data
        if name == b"IEND":
            return
        at += 12 + length
    raise BadPicture("the PNG ends too early", _AGAIN)


def _header(data: bytes) -> _Header:
    """Return the header. Raises BadPicture for one that is wrong, too large, or interlaced."""
    columns, rows = int.from_bytes(data[:4]), int.from_bytes(data[4:8])
    if len(data) != 13 or data[9] not in _DEPTHS or data[8] not in _DEPTHS[data[9]] or not columns or not rows:
        raise BadPicture("the PNG has no proper header", _AGAIN)
    if columns * rows > MAX_DOTS:
        raise BadPicture(
            f"the PNG has {columns} × {rows} dots, more than {MAX_DOTS}", "make it smaller, for example 600 × 300 dots"
        )
    if data[12]:
        raise BadPicture("the PNG is interlaced", "save it without interlacing")
    return _Header(columns, rows, data[8], data[9])


def _raw(parts: list[bytes], header: _Header) -> bytes:
    """Return the filtered rows, not a byte more than there can be. Raises BadPicture."""
    wanted = header.rows_count * (1 + header.row_bytes)
    try:
        raw = zlib.decompressobj().decompress(b"".join(parts), wanted)
    except zlib.error:
        raise BadPicture("the PNG is damaged", _AGAIN) from None
    if len(raw) < wanted:
        raise BadPicture("the PNG ends too early", _AGAIN)
    return raw


def _paeth(left: int, above: int, corner: int) -> int:
    """Return the neighbour nearest to left + above - corner (9.4 of the specification)."""
    near = left + above - corner
    by_left, by_above, by_corner = abs(near - left), abs(near - above), abs(near - corner)
    if by_left <= by_above and by_left <= by_corner:
        return left
    return above if by_above <= by_corner else corner


def _unfiltered(kind: int, row: bytearray, above: bytes, step: int) -> None:
    """Undo the filter of a row in place (9.2 of the specification). Raises BadPicture for another filter."""
    if kind == 1:
        for n in range(step, len(row)):
            row[n] = (row[n] + row[n - step]) & 255
    elif kind == 2:
        row[:] = bytes((a + b) & 255 for a, b in zip(row, above, strict=True))
    elif kind == 3:
        for n in range(len(row)):
            row[n] = (row[n] + ((row[n - step] if n >= step else 0) + above[n]) // 2) & 255
    elif kind == 4:
        for n in range(len(row)):
            left, corner = (row[n - step], above[n - step]) if n >= step else (0, 0)
            row[n] = (row[n] + _paeth(left, above[n], corner)) & 255
    elif kind:
        raise BadPicture("the PNG is damaged", _AGAIN)


def _rows(raw: bytes, header: _Header) -> Iterator[bytes]:
    """Yield the rows with their filters undone."""
    above, width = bytes(header.row_bytes), 1 + header.row_bytes
    for start in range(0, len(raw), width):
        row = bytearray(raw[start + 1 : start + width])
        _unfiltered(raw[start], row, above, header.step_bytes)
        above = bytes(row)
        yield above


def _samples(row: bytes, header: _Header) -> list[int]:
    """Return the samples of a row; of 16 bits the upper eight."""
    if header.depth == 8:
        return list(row)
    if header.depth == 16:
        return list(row[::2])
    per_byte, mask = 8 // header.depth, (1 << header.depth) - 1
    shifts = [8 - header.depth * (n + 1) for n in range(per_byte)]
    return [byte >> shift & mask for byte in row for shift in shifts][: header.columns_count]


def _on_white(value: int, opacity: int) -> int:
    return value if opacity == 255 else (value * opacity + 255 * (255 - opacity)) // 255


def _dots(samples: list[int], header: _Header, palette: list[tuple[int, int, int]], clear: bytes) -> Iterator[int]:
    """Yield red, green and blue of each dot of a row, on white. clear: the data of the chunk tRNS, empty for none."""
    if header.kind == 3:
        for index in samples:
            if index >= len(palette):
                raise BadPicture("the PNG is damaged", _AGAIN)
            opacity = clear[index] if index < len(clear) else 255
            yield from (_on_white(value, opacity) for value in palette[index])
        return
    count = _CHANNELS[header.kind]
    most = (1 << min(header.depth, 8)) - 1
    shift = 8 if header.depth == 16 else 0
    hidden = tuple(int.from_bytes(clear[n : n + 2]) >> shift for n in range(0, len(clear), 2)) if clear else None
    for n in range(0, len(samples), count):
        values = tuple(samples[n : n + count])
        colour, opacity = (values[:-1], values[-1]) if count in (2, 4) else (values, 0 if values == hidden else most)
        parts = colour * 3 if len(colour) == 1 else colour
        yield from (_on_white(value * 255 // most, opacity * 255 // most) for value in parts)


def read_png(content: bytes) -> Dots:
    """Return the dots of a PNG, what is transparent on white. Raises BadPicture."""
    header: _Header | None = None
    palette: list[tuple[int, int, int]] = []
    clear, parts = b"", []
    for name, data in _chunks(content):
        if name == b"IHDR":
            header = _header(data)
        elif name == b"PLTE":
            palette = [(data[n], data[n + 1], data[n + 2]) for n in range(0, len(data) - 2, 3)]
        elif name == b"tRNS":
            clear = data
        elif name == b"IDAT":
            parts.append(data)
    if header is None:
        raise BadPicture("the PNG has no proper header", _AGAIN)
    rows = _rows(_raw(parts, header), header)
    rgb = bytes(chain.from_iterable(_dots(_samples(row, header), header, palette, clear) for row in rows))
    return Dots(header.columns_count, header.rows_count, rgb)
