"""PNG files decoded: the same dots as Pillow finds in them, and each way to be unusable told."""

from __future__ import annotations

import io
import random
import struct
import zlib

import pytest

from sld.picture import BadPicture, Dots, read

image = pytest.importorskip("PIL.Image", reason="needs Pillow")
SIZE = (37, 11)
MODES = ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"]


def noise(mode: str) -> bytes:
    """A PNG of random dots with smooth parts, so that every filter is used."""
    drawn = random.Random(mode)
    picture = image.new("RGBA", SIZE)
    for x in range(SIZE[0]):
        for y in range(SIZE[1]):
            smooth = (7 * x % 256, 23 * y % 256, (x + y) * 5 % 256, (x * y) % 256)
            dot = tuple(drawn.randrange(256) for _ in range(4)) if y % 3 == 0 else smooth
            picture.putpixel((x, y), dot)
    if mode == "P":
        converted = picture.convert("RGB").quantize(9)
    elif mode == "I;16":
        converted = image.new(mode, SIZE)
        for x in range(SIZE[0]):
            for y in range(SIZE[1]):
                converted.putpixel((x, y), drawn.randrange(65536))
    else:
        converted = picture.convert(mode)
    out = io.BytesIO()
    converted.save(out, "PNG")
    return out.getvalue()


def by_pillow(content: bytes) -> bytes:
    """Red, green and blue of each dot on white."""
    opened = image.open(io.BytesIO(content))
    if opened.mode.startswith("I"):  # of 16 bits the upper eight, as the specification lets a viewer do (12.5)
        return bytes(opened.getpixel((x, y)) >> 8 for y in range(SIZE[1]) for x in range(SIZE[0]) for _ in range(3))
    picture = opened.convert("RGBA")
    return bytes(image.alpha_composite(image.new("RGBA", picture.size, "white"), picture).convert("RGB").tobytes())


@pytest.mark.parametrize("mode", MODES)
def test_the_dots_are_those_that_another_reader_finds(mode: str) -> None:
    content = noise(mode)
    found = read(content)
    assert isinstance(found, Dots)
    assert (found.columns_count, found.rows_count) == SIZE
    assert max(abs(a - b) for a, b in zip(found.rgb, by_pillow(content), strict=True)) <= 1  # rounding of mixtures


def test_a_palette_and_a_colour_can_be_transparent() -> None:
    out = io.BytesIO()
    palette = image.new("P", (2, 1))
    palette.putpalette([200, 0, 0, 0, 0, 200])
    palette.putpixel((1, 0), 1)
    palette.save(out, "PNG", transparency=0)
    found = read(out.getvalue())
    assert isinstance(found, Dots)
    assert found.rgb == bytes([255, 255, 255, 0, 0, 200])
    out = io.BytesIO()
    plain = image.new("RGB", (2, 1), (9, 8, 7))
    plain.putpixel((1, 0), (1, 2, 3))
    plain.save(out, "PNG", transparency=(1, 2, 3))
    found = read(out.getvalue())
    assert isinstance(found, Dots)
    assert found.rgb == bytes([9, 8, 7, 255, 255, 255])


def made(columns: int, rows: int, data: bytes, interlaced: int = 0, depth: int = 8, kind: int = 2) -> bytes:
    """A PNG by its parts."""

    def chunk(name: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))

    header = struct.pack(">IIBBBBB", columns, rows, depth, kind, 0, 0, interlaced)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(data)) + chunk(b"IEND", b"")


GOOD = made(1, 1, b"\0\1\2\3")
BAD = {
    "larger than 500 kB": b"\x89PNG\r\n\x1a\n" + bytes(500_000),
    "neither a PNG nor an SVG": b"GIF89a",
    "300001 × 1 dots": made(300_001, 1, b""),
    "interlaced": made(1, 1, b"\0\1\2\3", interlaced=1),
    "no proper header": made(0, 1, b""),
    "ends too early": made(1, 2, b"\0\1\2\3"),
    "damaged": GOOD.replace(b"IDAT", b"IDAX"),
    "PNG ends": GOOD[:-12],
}


def test_the_good_one_is_good() -> None:
    assert read(GOOD) == Dots(1, 1, b"\1\2\3")


@pytest.mark.parametrize("why", BAD)
def test_what_cannot_be_used_is_told(why: str) -> None:
    with pytest.raises(BadPicture, match=why) as told:
        read(BAD[why])
    assert told.value.remedy


@pytest.mark.parametrize(("depth", "kind"), [(3, 0), (16, 3), (4, 2), (8, 5)])
def test_a_kind_of_dots_that_is_none(depth: int, kind: int) -> None:
    with pytest.raises(BadPicture, match="header"):
        read(made(1, 1, b"\0\1\2\3", depth=depth, kind=kind))


def test_a_filter_that_is_none() -> None:
    with pytest.raises(BadPicture, match="damaged"):
        read(made(1, 1, b"\x05\1\2\3"))


def test_what_unpacks_to_gigabytes_is_not_unpacked() -> None:
    """Only the bytes that the header announces are taken."""
    assert read(made(1, 1, b"\0\1\2\3" + bytes(50_000_000))) == Dots(1, 1, b"\1\2\3")
