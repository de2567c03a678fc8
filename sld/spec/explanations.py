"""One small function for each way in which a value can have the wrong shape: code, message, remedy."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from sld.spec.fault import FAULT
from sld.spec.fields import blocks_at, example_value, fields_of, words_of
from sld.spec.suggestions import meant_key, meant_kind, meant_word
from sld.spec.synonyms import meant
from sld.spec.unusable_value import Explanation, UnusableValue, nearest, written_path

__all__ = ["EXPLANATIONS", "explained", "explained_key"]

_MOST_KEYS_LISTED = 12
_MOST_HOMES = 3
_YES_NO = {"yes": "true", "on": "true", "true": "true", "no": "false", "off": "false", "false": "false"}


def _listed(words: Iterable[str]) -> str:
    return ", ".join(f"`{word}`" for word in words)


def _missing(unusable: UnusableValue) -> Explanation:
    key = unusable.missing
    field = unusable.keys(unusable.path).get(key)
    words = words_of(field) if field else ()
    meaning = f" ({field.description.rstrip('.')})" if field and field.description else ""
    message = f"key `{key}` is missing in {written_path(unusable.path)}"
    if len(words) > 1:
        return Explanation("SP31", message, f"add `{key}:` with one of {_listed(words)}{meaning}")
    return Explanation("SP31", message, f"add `{key}:`{meaning}")


def _elsewhere(unusable: UnusableValue, key: str) -> str:
    """Return the block around or inside this one that has the key, in words, or nothing."""
    here = unusable.path[:-1]
    for length in range(len(here) - 1, -1, -1):
        if key in unusable.keys(here[:length]):
            return written_path(here[:length])
    for inner, value in unusable.block(here).items():
        if isinstance(value, dict) and key in unusable.keys((*here, inner)):
            return written_path((*here, inner))
    return ""


def _homes(key: str) -> str:
    """Return where else in the language a key, or what the trade calls so, is one, in words, or nothing."""
    from sld.spec.language.blocks import places
    from sld.spec.language.found import keys_called  # the whole language, which only a mistake needs

    found = keys_called(key)
    called = key if key in found else next((each for each in meant(key) if each in found), "")
    paths = [path for block in found.get(called, ()) for path in places().get(block, ())]
    where = [f"`{path}`" if path else "the top level" for path in paths[:_MOST_HOMES]]
    if not where:
        return ""
    more = " and others" if len(paths) > _MOST_HOMES else ""
    return f"{', '.join(where)}{more}" + ("" if called == key else f", there called `{called}`")


def _unknown_key(unusable: UnusableValue) -> Explanation:
    key, here = str(unusable.path[-1]), unusable.path[:-1]
    free = unusable.free_keys()
    near, home = meant_key(key, unusable.value, free, unusable.keys(here)), _elsewhere(unusable, key)
    if key[:1].isdigit():  # no key begins so: what follows a comma inside braces is read as a key
        remedy = "inside { } a comma ends an entry: write decimals with a point, and text with a comma in quotes"
    elif near:
        remedy = f"write `{near}`"
    elif home:
        remedy = f"it is a key of {home}; check the indentation"
    else:
        homes = _homes(key)
        what = f"it is a key of {homes}" if homes else "remove it"
        more = " and others" if len(free) > _MOST_KEYS_LISTED else ""
        remedy = f"{what}; keys not used here yet: {_listed(free[:_MOST_KEYS_LISTED])}{more}" if free else what
    return Explanation("SP30", f"unknown key `{key}` in {written_path(here)}", remedy, on_key=True)


def _word(unusable: UnusableValue) -> Explanation:
    words = unusable.words()
    plain = unusable.value if isinstance(unusable.value, str) else unusable.written()
    near = meant_word(plain, words)
    if plain in words:
        remedy = f"write {plain} without quotes" if isinstance(unusable.value, str) else f'put it in quotes: "{plain}"'
    else:
        remedy = f"write `{near}`" if near else f"write {'one of ' if len(words) > 1 else ''}{_listed(words)}"
    if plain in words and not isinstance(unusable.value, str):
        words = [f'"{word}"' for word in words]
    kind = " without quotes" if plain in words and isinstance(unusable.value, str) else ""
    expected = " or ".join(filter(None, (", ".join(words[:-1]), *words[-1:]))) + kind
    return Explanation("SP32", f"{unusable.name} is {unusable.shown()}, expected {expected}", remedy)


def _kind(unusable: UnusableValue) -> Explanation:
    words, tag = unusable.words(), str(unusable.context.get("tag", ""))
    near, more = meant_kind(tag, words)
    with_it = f" with `{more}`" if more else ""
    remedy = f"write `{near}`{with_it}; kinds here: {_listed(words)}" if near else f"write one of {_listed(words)}"
    return Explanation("SP33", f"unknown kind `{tag}`", remedy, at=(*unusable.path, "kind"))


def _no_kind(unusable: UnusableValue) -> Explanation:
    slip = nearest("kind", [key for key in unusable.block(unusable.path) if key not in unusable.keys(unusable.path)])
    if slip:
        message = f"unknown key `{slip}` in {written_path(unusable.path)}"
        return Explanation("SP30", message, "write `kind`", on_key=True, at=(*unusable.path, slip))
    blocks = blocks_at(unusable.root, unusable.source.data, unusable.path)
    kinds = [example_value(field) for block in blocks for key, field in fields_of(block).items() if key == "kind"]
    return Explanation("SP33", f"{unusable.name} has no `kind`", f"add `kind:` with one of {_listed(kinds)}")


def _empty(unusable: UnusableValue, expected: str) -> Explanation:
    remedy = "write a value, or leave the key out" if unusable.path else "write keys"
    return Explanation("SP34", f"{unusable.name} is empty, expected {expected}", remedy, on_key=True)


def _form(expected: str, remedy: Callable[[UnusableValue], str]) -> Callable[[UnusableValue], Explanation]:
    """Return the function for a value of another form than expected."""

    def told(unusable: UnusableValue) -> Explanation:
        if unusable.value is None:
            return _empty(unusable, expected)
        return Explanation("SP34", f"{unusable.name} is {unusable.shown()}, expected {expected}", remedy(unusable))

    return told


def _bare_number(unusable: UnusableValue) -> str:
    text = str(unusable.value).strip()
    if re.fullmatch(r"[-+]?[0-9]+(\.[0-9]+)?", text) and isinstance(unusable.value, str):
        bare = re.sub(r"^([-+]?)0+(?=[0-9])", r"\1", text)
        return f"write {bare} without quotes" if bare == text else f"write {bare} without the leading zero"
    return "write the number alone"


def _truth(unusable: UnusableValue) -> str:
    word = _YES_NO.get(str(unusable.value).casefold())
    return f"write {word}" if word else "write true or false"


def _quoted(unusable: UnusableValue) -> str:
    return "write one text" if isinstance(unusable.value, list | dict) else f'put it in quotes: "{unusable.written()}"'


def _entries(unusable: UnusableValue) -> str:
    if isinstance(unusable.value, dict):
        return "begin each entry with `- ` on a line of its own"
    return f"write [{unusable.written()}], or begin each entry with `- ` on a line of its own"


def _keys(unusable: UnusableValue) -> str:
    if isinstance(unusable.value, list):
        return "write a name or key and a colon instead of each dash"
    return "write keys under it, each on a line of its own"


def _bound(unusable: UnusableValue) -> Explanation:
    words = {"gt": "more than", "ge": "at least", "lt": "less than", "le": "at most", "multiple_of": "a multiple of"}
    must, bound = next((words[key], value) for key, value in unusable.context.items() if key in words)
    message = f"{unusable.name} is {unusable.written()}, must be {must} {bound:g}"
    return Explanation("SP36", message, "correct the number")


def _length(unusable: UnusableValue) -> Explanation:
    context = unusable.context
    low, high = context.get("min_length"), context.get("max_length")
    what = "characters" if unusable.kind.startswith("string") else "entries"
    count = len(unusable.value) if isinstance(unusable.value, str | list | dict) else context.get("actual_length", 0)
    must = f"at least {low}" if low is not None else f"at most {high}"
    remedy = f"write {must}"
    if low == 1:
        remedy = "write a text" if what == "characters" else "write at least one entry, or leave the key out"
    return Explanation("SP37", f"{unusable.name} has {count} {what}, must have {must}", remedy)


def _pattern(unusable: UnusableValue) -> Explanation:
    field = unusable.field()
    meaning = f": {field.description.rstrip('.')}" if field and field.description else ""
    message = f"{unusable.name} is `{unusable.value}`, which does not have the form {unusable.context.get('pattern')}"
    return Explanation("SP37", message, f"write it in that form{meaning}")


def _date(unusable: UnusableValue) -> Explanation:
    return Explanation("SP37", f"{unusable.name} is {unusable.shown()}, expected a date", "write it as YYYY-MM-DD")


def _quantity(unusable: UnusableValue) -> Explanation:
    if unusable.value is None:
        return _empty(unusable, "a number")
    return Explanation("SP35", f"{unusable.name}: {unusable.text}", str(unusable.context["remedy"]))


def _quantity_size(unusable: UnusableValue) -> Explanation:
    return Explanation("SP36", f"{unusable.name}: {unusable.text}", str(unusable.context["remedy"]))


def _quantity_range(unusable: UnusableValue) -> Explanation:
    return Explanation("SP36", f"{unusable.name}: {unusable.text}", "check number, sign and unit")


def _not_finite(unusable: UnusableValue) -> Explanation:
    return Explanation("SP36", f"{unusable.name} is not a finite number", "write a finite number")


def _refused(unusable: UnusableValue) -> Explanation:
    reason = str(unusable.context.get("error", unusable.text))
    return Explanation("SP38", f"{unusable.name}: {reason}", "change one of the values", on_key=True)


def _fault(unusable: UnusableValue) -> Explanation:
    key = str(unusable.context.get("key", ""))
    at = (*unusable.path, *key.split(".")) if key else unusable.path
    return Explanation("SP38", str(unusable.context["message"]), str(unusable.context["remedy"]), at=at)


def explained_key(unusable: UnusableValue) -> Explanation:
    """Return what is wrong with a name that is used as a key."""
    reason = unusable.context.get("pattern")
    form = f"does not have the form {reason}" if reason else "is too short or too long"
    return Explanation("SP37", f"the name {unusable.name} {form}", "choose another name", on_key=True)


_WHOLE = _form("a whole number", _bare_number)
_BLOCK = _form("a block of keys", _keys)
_LIST = _form("a list", _entries)

EXPLANATIONS: dict[str, Callable[[UnusableValue], Explanation]] = {
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


def explained(unusable: UnusableValue) -> Explanation:
    """Return what a finding says about a mistake; an error type that is not listed keeps pydantic's words."""
    told = EXPLANATIONS.get(unusable.kind)
    if told is not None:
        return told(unusable)
    message = f"{unusable.name}: {unusable.text[:1].lower()}{unusable.text[1:]}"
    return Explanation("SP39", message, "compare it with gallery/spec-reference.md, which has every key")
