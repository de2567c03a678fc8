"""One small function for each way in which a value can have the wrong shape: code, message, remedy."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from sld.spec.fault import FAULT
from sld.spec.fields import blocks_at, example_value, fields_of, words_of
from sld.spec.mistake import Mistake, Told, nearest, written_path

__all__ = ["TOLD", "tell", "told_key_error"]

_MOST_KEYS_LISTED = 12
_YES_NO = {"yes": "true", "on": "true", "true": "true", "no": "false", "off": "false", "false": "false"}


def _listed(words: Iterable[str]) -> str:
    return ", ".join(f"`{word}`" for word in words)


def _missing(mistake: Mistake) -> Told:
    key = mistake.missing
    field = mistake.keys(mistake.path).get(key)
    example = example_value(field) if field else ""
    words = words_of(field) if field else ()
    meaning = f" ({field.description.rstrip('.')})" if field and field.description else ""
    message = f"key `{key}` is missing in {written_path(mistake.path)}"
    if len(words) > 1:
        return Told("SP31", message, f"add `{key}:` with one of {_listed(words)}{meaning}")
    return Told("SP31", message, f"add `{key}: {example}`{meaning}" if example else f"add `{key}:`{meaning}")


def _elsewhere(mistake: Mistake, key: str) -> str:
    """Return the block around or inside this one that has the key, in words, or nothing."""
    here = mistake.path[:-1]
    for length in range(len(here) - 1, -1, -1):
        if key in mistake.keys(here[:length]):
            return written_path(here[:length])
    for inner, value in mistake.block(here).items():
        if isinstance(value, dict) and key in mistake.keys((*here, inner)):
            return written_path((*here, inner))
    return ""


def _unknown_key(mistake: Mistake) -> Told:
    key, here = str(mistake.path[-1]), mistake.path[:-1]
    free = mistake.free_keys()
    near, home = nearest(key, free), _elsewhere(mistake, key)
    if key[:1].isdigit():  # no key begins so: what follows a comma inside braces is read as a key
        remedy = "inside { } a comma ends an entry: write decimals with a point, and text with a comma in quotes"
    elif near:
        remedy = f"write `{near}`"
    elif home:
        remedy = f"it is a key of {home}; check the indentation"
    elif free:
        more = " and others" if len(free) > _MOST_KEYS_LISTED else ""
        remedy = f"remove it; keys not used here yet: {_listed(free[:_MOST_KEYS_LISTED])}{more}"
    else:
        remedy = "remove it"
    return Told("SP30", f"unknown key `{key}` in {written_path(here)}", remedy, on_key=True)


def _word(mistake: Mistake) -> Told:
    words = mistake.words()
    plain = mistake.value if isinstance(mistake.value, str) else mistake.written()
    near = nearest(plain, words)
    if plain in words:
        remedy = f"write {plain} without quotes" if isinstance(mistake.value, str) else f'put it in quotes: "{plain}"'
    else:
        remedy = f"write `{near}`" if near else f"write {'one of ' if len(words) > 1 else ''}{_listed(words)}"
    if plain in words and not isinstance(mistake.value, str):
        words = [f'"{word}"' for word in words]
    kind = " without quotes" if plain in words and isinstance(mistake.value, str) else ""
    expected = " or ".join(filter(None, (", ".join(words[:-1]), *words[-1:]))) + kind
    return Told("SP32", f"{mistake.name} is {mistake.shown()}, expected {expected}", remedy)


def _kind(mistake: Mistake) -> Told:
    words, tag = mistake.words(), str(mistake.context.get("tag", ""))
    near = nearest(tag, words)
    remedy = f"write `{near}`; kinds here: {_listed(words)}" if near else f"write one of {_listed(words)}"
    return Told("SP33", f"unknown kind `{tag}`", remedy, at=(*mistake.path, "kind"))


def _no_kind(mistake: Mistake) -> Told:
    slip = nearest("kind", [key for key in mistake.block(mistake.path) if key not in mistake.keys(mistake.path)])
    if slip:
        message = f"unknown key `{slip}` in {written_path(mistake.path)}"
        return Told("SP30", message, "write `kind`", on_key=True, at=(*mistake.path, slip))
    blocks = blocks_at(mistake.root, mistake.source.data, mistake.path)
    kinds = [example_value(field) for block in blocks for key, field in fields_of(block).items() if key == "kind"]
    return Told("SP33", f"{mistake.name} has no `kind`", f"add `kind:` with one of {_listed(kinds)}")


def _empty(mistake: Mistake, expected: str) -> Told:
    remedy = "write a value, or leave the key out" if mistake.path else "write keys"
    return Told("SP34", f"{mistake.name} is empty, expected {expected}", remedy, on_key=True)


def _form(expected: str, remedy: Callable[[Mistake], str]) -> Callable[[Mistake], Told]:
    """Return the function for a value of another form than expected."""

    def told(mistake: Mistake) -> Told:
        if mistake.value is None:
            return _empty(mistake, expected)
        return Told("SP34", f"{mistake.name} is {mistake.shown()}, expected {expected}", remedy(mistake))

    return told


def _bare_number(mistake: Mistake) -> str:
    text = str(mistake.value).strip()
    if re.fullmatch(r"[-+]?[0-9]+(\.[0-9]+)?", text) and isinstance(mistake.value, str):
        bare = re.sub(r"^([-+]?)0+(?=[0-9])", r"\1", text)
        return f"write {bare} without quotes" if bare == text else f"write {bare} without the leading zero"
    return "write the number alone, such as 2"


def _truth(mistake: Mistake) -> str:
    word = _YES_NO.get(str(mistake.value).casefold())
    return f"write {word}" if word else "write true or false"


def _quoted(mistake: Mistake) -> str:
    return "write one text" if isinstance(mistake.value, list | dict) else f'put it in quotes: "{mistake.written()}"'


def _entries(mistake: Mistake) -> str:
    if isinstance(mistake.value, dict):
        return "begin each entry with `- ` on a line of its own"
    return f"write [{mistake.written()}], or begin each entry with `- ` on a line of its own"


def _keys(mistake: Mistake) -> str:
    if isinstance(mistake.value, list):
        return "write a name or key and a colon instead of each dash"
    return "write keys under it, each on a line of its own"


def _bound(mistake: Mistake) -> Told:
    words = {"gt": "more than", "ge": "at least", "lt": "less than", "le": "at most", "multiple_of": "a multiple of"}
    must, bound = next((words[key], value) for key, value in mistake.context.items() if key in words)
    message = f"{mistake.name} is {mistake.written()}, must be {must} {bound:g}"
    return Told("SP36", message, f"write a value of {must} {bound:g}")


def _length(mistake: Mistake) -> Told:
    context = mistake.context
    low, high = context.get("min_length"), context.get("max_length")
    what = "characters" if mistake.kind.startswith("string") else "entries"
    count = len(mistake.value) if isinstance(mistake.value, str | list | dict) else context.get("actual_length", 0)
    must = f"at least {low}" if low is not None else f"at most {high}"
    remedy = f"write {must}"
    if low == 1:
        remedy = "write a text" if what == "characters" else "write at least one entry, or leave the key out"
    return Told("SP37", f"{mistake.name} has {count} {what}, must have {must}", remedy)


def _pattern(mistake: Mistake) -> Told:
    field = mistake.field()
    meaning = f": {field.description.rstrip('.')}" if field and field.description else ""
    message = f"{mistake.name} is `{mistake.value}`, which does not have the form {mistake.context.get('pattern')}"
    return Told("SP37", message, f"write it in that form{meaning}")


def _date(mistake: Mistake) -> Told:
    return Told("SP37", f"{mistake.name} is {mistake.shown()}, expected a date", "write it as YYYY-MM-DD")


def _quantity(mistake: Mistake) -> Told:
    if mistake.value is None:
        return _empty(mistake, "a number")
    return Told("SP35", f"{mistake.name}: {mistake.text}", str(mistake.context["remedy"]))


def _quantity_size(mistake: Mistake) -> Told:
    return Told("SP36", f"{mistake.name}: {mistake.text}", str(mistake.context["remedy"]))


def _quantity_range(mistake: Mistake) -> Told:
    context = mistake.context
    return Told("SP36", f"{mistake.name}: {mistake.text}", f"write a value of {context['must']} {context['bound']}")


def _not_finite(mistake: Mistake) -> Told:
    return Told("SP36", f"{mistake.name} is not a finite number", "write a finite number")


def _refused(mistake: Mistake) -> Told:
    reason = str(mistake.context.get("error", mistake.text))
    return Told("SP38", f"{mistake.name}: {reason}", "change one of the values", on_key=True)


def _fault(mistake: Mistake) -> Told:
    key = str(mistake.context.get("key", ""))
    at = (*mistake.path, *key.split(".")) if key else mistake.path
    return Told("SP38", str(mistake.context["message"]), str(mistake.context["remedy"]), at=at)


def told_key_error(mistake: Mistake) -> Told:
    """Return what is wrong with a name that is used as a key."""
    reason = mistake.context.get("pattern")
    form = f"does not have the form {reason}" if reason else "is too short or too long"
    return Told("SP37", f"the name {mistake.name} {form}", "choose another name", on_key=True)


_WHOLE = _form("a whole number", _bare_number)
_BLOCK = _form("a block of keys", _keys)
_LIST = _form("a list", _entries)

TOLD: dict[str, Callable[[Mistake], Told]] = {
    "missing": _missing,
    "extra_forbidden": _unknown_key,
    "literal_error": _word,
    "enum": _word,
    "union_tag_invalid": _kind,
    "union_tag_not_found": _no_kind,
    "float_type": _form("a number", _bare_number),
    "int_type": _WHOLE,
    "int_from_float": _WHOLE,
    "bool_type": _form("true or false", _truth),
    "string_type": _form("a text", _quoted),
    "list_type": _LIST,
    "tuple_type": _LIST,
    "dict_type": _BLOCK,
    "model_type": _BLOCK,
    "model_attributes_type": _BLOCK,
    "greater_than": _bound,
    "greater_than_equal": _bound,
    "less_than": _bound,
    "less_than_equal": _bound,
    "multiple_of": _bound,
    "finite_number": _not_finite,
    "too_short": _length,
    "too_long": _length,
    "string_too_short": _length,
    "string_too_long": _length,
    "string_pattern_mismatch": _pattern,
    "date_type": _date,
    "date_parsing": _date,
    "date_from_datetime_parsing": _date,
    "date_from_datetime_inexact": _date,
    "quantity_number": _quantity,
    "quantity_unit": _quantity,
    "quantity_range": _quantity_range,
    "quantity_size": _quantity_size,
    "value_error": _refused,
    "assertion_error": _refused,
    FAULT: _fault,
}


def tell(mistake: Mistake) -> Told:
    """Return what a finding says about a mistake; an error type that is not listed keeps pydantic's words."""
    told = TOLD.get(mistake.kind)
    if told is not None:
        return told(mistake)
    message = f"{mistake.name}: {mistake.text[:1].lower()}{mistake.text[1:]}"
    return Told("SP39", message, "compare it with gallery/spec-reference.md, which has every key")
