"""What an SVG may hold, looked at before it is drawn: no script, no text, nothing from outside the file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element, ParseError

from defusedxml import DefusedXmlException
from defusedxml.ElementTree import fromstring

from sld.picture.picture import BadPicture

__all__ = ["refuse_foreign"]

MAX_ELEMENTS_COUNT = 3_000
MAX_DEPTH_COUNT = 40
MAX_STYLE_BYTES = 10_000
MAX_MATCHES_COUNT = 1_000_000
"""How often a selector may be compared with an element, about a second of work."""

SVG = "{http://www.w3.org/2000/svg}"
TAKEN = {
    "svg", "g", "defs", "use", "symbol", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon",
    "linearGradient", "radialGradient", "stop", "clipPath", "style", "title", "desc", "metadata",
}  # fmt: skip
"""What CairoSVG draws as the standard says and from the file alone, and what draws nothing."""

HREF = ("href", "{http://www.w3.org/1999/xlink}href")
ELSEWHERE = re.compile(r"""url\(\s*["']?\s*((?!["'#\s])[^)"']*)""", re.IGNORECASE)
"""A reference of CSS to anything but a part of the same file."""


def _root(content: bytes) -> Element:
    """Return the root. Raises BadPicture where it is not plain XML in UTF-8."""
    try:
        content.decode("utf-8")
        root: Element = fromstring(content, forbid_entities=True, forbid_external=True)
    except UnicodeDecodeError:
        raise BadPicture("the SVG is not UTF-8 text", "save it as UTF-8") from None
    except DefusedXmlException:
        raise BadPicture("the SVG defines entities", "save it as plain SVG") from None
    except (ParseError, ValueError, LookupError) as problem:
        raise BadPicture(f"the SVG is not well-formed: {problem}", "save it again as plain SVG") from None
    if root.tag not in (f"{SVG}svg", "svg"):
        raise BadPicture("the file is not an SVG", "save the picture as PNG or SVG")
    return root


def _elements(root: Element) -> Iterator[Element]:
    """Yield all elements. Raises BadPicture for too many, and for those in one another too deep."""
    level, depth, count = [root], 0, 0
    while level:
        count += len(level)
        if depth > MAX_DEPTH_COUNT:
            raise BadPicture("the SVG is nested too deeply", "ungroup it")
        if count > MAX_ELEMENTS_COUNT:
            raise BadPicture(f"the SVG has more than {MAX_ELEMENTS_COUNT} elements", "simplify it")
        yield from level
        level, depth = [child for element in level for child in element], depth + 1


def _refuse_references(element: Element) -> None:
    """Raise BadPicture for a reference to anything but a part of the same file."""
    found = [element.get(key, "#") for key in HREF if not element.get(key, "#").startswith("#")]
    style = element.text or "" if element.tag.endswith("style") else ""
    for text in (*element.attrib.values(), style):
        found += ELSEWHERE.findall(text)
        found += ["@import"] if "@import" in text.lower() else []
    if found:
        raise BadPicture(
            f"the SVG refers to `{found[0][:40]}`, outside of itself", "take everything that it shows into the file"
        )


def _refuse_chains(elements: list[Element]) -> None:
    """Raise BadPicture for gradients that borrow from one another over and over, which takes long to draw."""
    borrowing = {
        element.get("id"): element.get(HREF[0], element.get(HREF[1], ""))[1:]
        for element in elements
        if element.tag.endswith("Gradient")
    }
    for start in borrowing:
        name: str | None = start
        for _ in range(3):
            name = borrowing.get(name) if name else None
        if name:
            raise BadPicture("the SVG has gradients that refer to one another", "save it as plain SVG")


def _matches_count(style: str, elements_count: int) -> int:
    """Return how often selectors of a style sheet are compared with elements, at worst.

    One that looks at what is around an element does so again for each of the elements around, one that looks at its
    siblings for each of these.
    """
    count = 0
    for prelude in re.findall(r"([^{};]*)\{", re.sub(r"/\*.*?(\*/|$)", " ", style, flags=re.DOTALL)):
        for selector in prelude.split(","):
            siblings = selector.count("~") + selector.count(":")
            around = len(re.sub(r"\s*[>+~]\s*", ">", selector.strip()).split()) - 1
            count += elements_count ** (1 + min(siblings, 3)) * MAX_DEPTH_COUNT ** min(max(around, 0), 5)
    return count


def refuse_foreign(content: bytes) -> None:
    """Raise BadPicture for an SVG that holds what cannot be taken, with its name."""
    elements = list(_elements(_root(content)))
    for element in elements:
        own = element.tag.startswith(SVG) or not element.tag.startswith("{")
        name = element.tag.removeprefix(SVG)
        if own and name not in TAKEN:
            remedy = "turn text into paths" if name in ("text", "tspan") else "turn everything into plain paths"
            raise BadPicture(f"the SVG has a `{name[:40]}`, which cannot be taken", remedy)
        if own:
            _refuse_references(element)
    style = "".join(element.text or "" for element in elements if element.tag.endswith("style"))
    if len(style) > MAX_STYLE_BYTES:
        raise BadPicture("the SVG has too long a style sheet", "save it as plain SVG")
    if _matches_count(style, len(elements)) > MAX_MATCHES_COUNT:
        raise BadPicture("the SVG has too many selectors for its elements", "simplify it, or save it as PNG")
    _refuse_chains(elements)
