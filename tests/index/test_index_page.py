"""What the index says of each spec, and that nothing of a spec can become an element, an attribute or an address."""

from __future__ import annotations

from html.parser import HTMLParser

import pytest

from sld.index.page import MARK, Entry, item, page

ODD = "</ul><script>alert(1)</script>\"&'<b>"


class Read(HTMLParser):
    """The elements of a page, with their texts."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.texts += [data.strip()] if data.strip() else []


def test_what_is_said_of_a_spec() -> None:
    files = ("a/s-x.svg", "a/s-x-2.svg", "a/s-x.pdf")
    read = Read(item(Entry("a/s.yaml", "with findings", "Mill Lane", "1 danger", ("DC01", "AC04"), files, "why not")))
    assert read.texts == [
        "Mill Lane", "a/s.yaml", "with findings: 1 danger", "DC01 AC04", "why not", "s-x.svg", "s-x-2.svg", "s-x.pdf",
    ]  # fmt: skip
    assert [attributes["href"] for tag, attributes in read.elements if tag == "a"] == [
        "./a/s-x.svg", "./a/s-x.svg", "./a/s-x-2.svg", "./a/s-x.pdf",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("files", "picture"),
    [
        (("s.svg", "s.png", "s-2.png"), "./s.png"),
        (("s.svg", "s-2.svg"), "./s.svg"),
        (("javascript%3Ax.svg",), "./javascript%3Ax.svg"),
        (("s.pdf",), None),
        ((), None),
    ],
)
def test_the_picture_is_the_first_sheet(files: tuple[str, ...], picture: str | None) -> None:
    pictures = [attributes["src"] for tag, attributes in Read(item(Entry("s.yaml", "clean", files=files))).elements
                if tag == "img"]  # fmt: skip
    assert pictures == ([picture] if picture else [])


def test_nothing_of_a_spec_becomes_an_element() -> None:
    plain = Read(item(Entry("s", "clean", "t", "1", ("c",), ("f.svg",), "why")))
    odd = Read(item(Entry(ODD, "clean", ODD, ODD, (ODD,), (f"{ODD}.svg",), ODD)))
    assert [tag for tag, _ in odd.elements] == [tag for tag, _ in plain.elements]
    assert [set(attributes) for _, attributes in odd.elements] == [set(attributes) for _, attributes in plain.elements]
    assert odd.texts.count(ODD) == 4


def test_the_page_counts_and_is_known_again() -> None:
    text = "".join(page(["<li>1</li>"], {"clean": 3, "unusable": 1}, "4 checked"))
    assert text.startswith(MARK)
    assert text == "".join(page(["<li>1</li>"], {"clean": 3, "unusable": 1}, "4 checked"))
    assert {"clean (3)", "unusable (1)"} <= set(Read(text).texts)
