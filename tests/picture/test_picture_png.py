"""PNG files decoded: the dots that the specification says, those of another reader, and each refusal."""

from __future__ import annotations

import io
import random
import struct
import zlib

import cairocffi
import pytest
from PIL import Image

from sld.picture import BadPicture, Picture, read

SIZE = (37, 11)
MODES = ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"]


def noise(mode: str) -> bytes:
    """A PNG of random dots with smooth parts, so that every filter is used."""
    drawn = random.Random(mode)
    picture = Image.new("RGBA", SIZE)
    for x in range(SIZE[0]):
        for y in range(SIZE[1]):
            smooth = (7 * x % 256, 23 * y % 256, (x + y) * 5 % 256, (x * y) % 256)
            dot = tuple(drawn.randrange(256) for _ in range(4)) if y % 3 == 0 else smooth
            picture.putpixel((x, y), dot)
    if mode == "P":
        converted = picture.convert("RGB").quantize(9)
    elif mode == "I;16":
        converted = Image.new(mode, SIZE)
        for x in range(SIZE[0]):
            for y in range(SIZE[1]):
                converted.putpixel((x, y), drawn.randrange(65536))
    else:
        converted = picture.convert(mode)
    out = io.BytesIO()
    converted.save(out, "PNG")
    return out.getvalue()


def by_cairo(content: bytes) -> bytes:
    """Red, green and blue of each dot on white, as libpng decodes them and cairo mixes them."""
    target = cairocffi.ImageSurface(cairocffi.FORMAT_RGB24, *SIZE)
    context = cairocffi.Context(target)
    context.set_source_rgb(1, 1, 1)
    context.paint()
    context.set_source_surface(cairocffi.ImageSurface.create_from_png(io.BytesIO(content)))
    context.paint()
    words = struct.unpack(f"={SIZE[0] * SIZE[1]}I", bytes(target.get_data()))
    return b"".join((word & 0xFFFFFF).to_bytes(3) for word in words)


@pytest.mark.parametrize("mode", MODES)
def test_the_dots_are_those_that_another_reader_finds(mode: str) -> None:
    """Of 16 bits the upper eight, as the specification lets a viewer do (PNG, second edition, 12.5)."""
    content = noise(mode)
    found = read(content)
    assert (found.columns_count, found.rows_count) == SIZE
    assert max(abs(a - b) for a, b in zip(found.rgb, by_cairo(content), strict=True)) <= 2  # rounding of mixtures


def test_a_palette_and_a_colour_can_be_transparent() -> None:
    out = io.BytesIO()
    palette = Image.new("P", (2, 1))
    palette.putpalette([200, 0, 0, 0, 0, 200])
    palette.putpixel((1, 0), 1)
    palette.save(out, "PNG", transparency=0)
    found = read(out.getvalue())
    assert found.rgb == bytes([255, 255, 255, 0, 0, 200])
    out = io.BytesIO()
    plain = Image.new("RGB", (2, 1), (9, 8, 7))
    plain.putpixel((1, 0), (1, 2, 3))
    plain.save(out, "PNG", transparency=(1, 2, 3))
    found = read(out.getvalue())
    assert found.rgb == bytes([9, 8, 7, 255, 255, 255])


def made(
    columns: int, rows: int, data: bytes, interlaced: int = 0, depth: int = 8, kind: int = 2, cut: int = 0
) -> bytes:
    """A PNG by its parts. cut: how many bytes of the packed data are missing."""

    def chunk(name: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))

    header = struct.pack(">IIBBBBB", columns, rows, depth, kind, 0, 0, interlaced)
    packed = zlib.compress(data)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", header)
        + chunk(b"IDAT", packed[: len(packed) - cut])
        + chunk(b"IEND", b"")
    )


GOOD = made(1, 1, b"\0\1\2\3")
BAD = {
    "larger than 500 kB": b"\x89PNG\r\n\x1a\n" + bytes(500_000),
    "neither a PNG nor an SVG": b"GIF89a",
    "500001 × 1 dots": made(500_001, 1, b""),
    "1 × 400000 dots, more than 10000 on one side": made(1, 400_000, b""),
    "10001 × 1 dots": made(10_001, 1, b""),
    "100000 × 800 dots": made(100_000, 800, b""),
    "more than 500000 dots": made(2**31 - 1, 2**31 - 1, b""),
    "is dam": made(0, 1, b""),
    "or ends too early": made(1, 2, b"\0\1\2\3\0\4\5\6", cut=9),
    "PNG is damaged": GOOD.replace(b"IDAT", b"IDAX"),
    "damaged or ends": GOOD[:-12],
    "damaged": GOOD[:40],
    "is damaged": GOOD[:20],
}


def test_the_good_one_is_good() -> None:
    assert read(GOOD) == Picture(1, 1, b"\1\2\3")


@pytest.mark.parametrize("why", BAD)
def test_what_cannot_be_used_is_told(why: str) -> None:
    with pytest.raises(BadPicture, match=why) as told:
        read(BAD[why])
    assert told.value.remedy


@pytest.mark.parametrize("at", range(8, GOOD.index(b"IEND") - 4))
def test_any_bit_turned_over_is_noticed(at: int) -> None:
    """Every chunk has a check sum (PNG, second edition, 5.3)."""
    with pytest.raises(BadPicture):
        read(GOOD[:at] + bytes([GOOD[at] ^ 32]) + GOOD[at + 1 :])


@pytest.mark.parametrize(("depth", "kind"), [(3, 0), (16, 3), (4, 2), (8, 5)])
def test_a_kind_of_dots_that_is_none(depth: int, kind: int) -> None:
    with pytest.raises(BadPicture, match="damaged"):
        read(made(1, 1, b"\0\1\2\3", depth=depth, kind=kind))


def test_a_filter_that_is_none() -> None:
    with pytest.raises(BadPicture, match="damaged"):
        read(made(1, 1, b"\x05\1\2\3"))


def test_an_interlaced_file_is_read() -> None:
    """One dot is all in the first of the seven passes (PNG, second edition, 8.2)."""
    assert read(made(1, 1, b"\0\1\2\3", interlaced=1)) == Picture(1, 1, b"\1\2\3")


def test_nothing_that_is_written_into_the_file_unpacks_to_gigabytes() -> None:
    text = b"zTXt" + b"Comment\0\0" + zlib.compress(bytes(300_000_000))
    chunk = struct.pack(">I", len(text) - 4) + text + struct.pack(">I", zlib.crc32(text))
    with pytest.raises(BadPicture, match="damaged"):
        read(GOOD[:33] + chunk + GOOD[33:])


def test_what_unpacks_to_gigabytes_is_not_unpacked() -> None:
    """Only the bytes that the header announces are taken."""
    assert read(made(1, 1, b"\0\1\2\3" + bytes(50_000_000))) == Picture(1, 1, b"\1\2\3")
