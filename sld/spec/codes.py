"""The codes of everything that makes a spec unusable, for `sld explain`.

SP01 to SP19: the text cannot be read. SP20 to SP29: an included types file, the logo, or a file of grid rules cannot be
used. SP30 to SP49: the text was read, and a block does not have the shape that its keys promise.
"""

from __future__ import annotations

import inspect

from sld.finding import RULES, Rule, Severity

__all__ = ["register"]


def register(code: str, title: str, explanation: str) -> None:
    """Add a code without a check to the registry. Raises ValueError when the code is taken."""
    if code in RULES:
        raise ValueError(f"rule code {code} is given twice")
    RULES[code] = Rule(code, title, Severity.DANGER, "", inspect.cleandoc(explanation), None)


_TEXT = {
    "SP01": ("file cannot be read", "The file does not exist, is a folder, or may not be read by this user."),
    "SP02": ("file is too large", "A spec or types file holds at most 2 MB of text and 100,000 values."),
    "SP03": ("not UTF-8 text", "A spec is plain text in UTF-8. Word processors and binary formats cannot be read."),
    "SP04": (
        "character that does not print",
        "Control characters inside the text are refused, and in values what turns the order of letters round or has no "
        "width: they cannot be seen and change the meaning.",
    ),
    "SP05": ("nothing in the file", "The file is empty or holds comments only."),
    "SP06": (
        "tab in the indentation",
        "Blocks are indented with spaces. How wide a tab is differs from editor to editor.",
    ),
    "SP07": (
        "indentation or structure",
        """
        The keys of one block stand in the same column, a block inside another stands further right, and each entry of
        a list begins with a dash and a space. A colon is followed by a space.
        """,
    ),
    "SP08": ("quote not closed", "A text that begins with a quote goes on until the same quote comes again."),
    "SP09": ("bracket not closed", "What is opened with [ or { ends with ] or }, with commas between the entries."),
    "SP10": (
        "text that needs quotes",
        "Text that begins with one of @ ` % * & ! | > or that holds a colon and a space is put in quotes.",
    ),
    "SP11": ("key given twice", "A key stands once in a block. The second one would silently win over the first."),
    "SP12": (
        "anchors and aliases",
        "&name and *name are refused: a short text could grow without limit. `types` holds what is used again.",
    ),
    "SP13": ("tags", "!tags are refused: a value is a number, true or false, a text, a list or a block by its form."),
    "SP14": ("merge key", "The key << is refused. Put common values in a type under `types` and refer to it by name."),
    "SP15": ("more than one document", "A file holds one spec, so --- may stand only at its beginning."),
    "SP16": ("nested too deeply", "Blocks and lists may be nested 50 deep; a spec needs about 10."),
    "SP17": ("key is not one word", "A key is one word with text, not a list, a block, or nothing."),
    "SP18": (
        "no block at the top level",
        "The top level of a spec holds keys such as `project:`; it is neither a list nor a text.",
    ),
    "SP19": (
        "escape in double quotes",
        "A backslash in double quotes begins an escape such as \\n; in single quotes it is a plain character.",
    ),
    "SP20": (
        "include is not a list of files",
        "`include` lists types files by their path relative to the file it stands in.",
    ),
    "SP21": ("included file not found", "The path is relative to the folder of the spec that includes it."),
    "SP22": (
        "included file outside the folder",
        "Included files stand in the folder of the spec or below it, so that a spec can be passed on as one folder.",
    ),
    "SP23": (
        "included file holds more than types",
        "An included file holds the key `types` and nothing else; it includes no other.",
    ),
    "SP24": ("type defined in two files", "Each type has one definition, so that it is certain which values are used."),
    "SP25": ("file included twice", "A file is included once, and a spec does not include itself."),
    "SP26": (
        "logo that cannot be used",
        """
        A logo is a PNG or SVG file of at most 500 kB in the folder of the spec or below it. Nothing of the file but its
        dots goes on to a drawing: a PNG is decoded, an SVG drawn at 600 dots per inch. No other file is read for it, so
        an SVG with images, scripts or references to files is refused; so is one with text, as the fonts of machines
        differ. An SVG needs the cairo library (libcairo2).
        """,
    ),
    "SP27": (
        "file of grid rules that cannot be used",
        """
        A file of grid rules is a TOML file in the folder of the spec or below it. It says whose rules they are (`by`)
        and replaces entries of the country's rules one by one (`[[replace]]` with `entry`, `reason` and whatever is
        other than there); the names of the entries are on the page of grid rules.
        """,
    ),
    "SP28": (
        "settings set that the country does not have",
        """
        The set of network settings of an inverter is one of those in the grid rules of the country, by its name, which
        more may follow, or `generic` for none of them.
        """,
    ),
    "SP29": (
        "font that cannot be used",
        """
        A font is a TrueType or OpenType file of at most 40 MB in the folder of the spec or below it. Only letters that
        the font of the sheets lacks are taken from it, and of these only those that are at most an em wide, because
        that is the room they are given. It is read with the library fonttools.
        """,
    ),
    "SP30": (
        "unknown key",
        "The block has no such key. Misspelt keys are refused, because their values would be ignored.",
    ),
    "SP31": ("missing key", "The block cannot be used without this key, and no value can be assumed for it."),
    "SP32": ("not one of the allowed words", "The value is one of a few words; the message lists them."),
    "SP33": ("unknown kind", "`kind` says what the block describes and so which keys it has."),
    "SP34": (
        "wrong form of value",
        "A number, a text, true or false, a list and a block are different forms of value.",
    ),
    "SP35": (
        "not a quantity in the right unit",
        """
        A quantity is a bare number in the unit of the key, or a number and a unit of the same kind: `25 m`, `0.4 kV`.
        Decimals have a point, thousands are not parted.
        """,
    ),
    "SP36": ("out of range", "The value is outside of what is possible for this key."),
    "SP37": ("text of the wrong form or length", "The text has to match a form, for example a date 2026-01-31."),
    "SP38": ("values that contradict each other", "Values of one block do not fit together."),
    "SP39": ("other mistake in a value", "The value was refused for a reason that the message gives."),
    "SP40": ("many mistakes", "Of each file the first hundred mistakes are told, and how many more there are."),
}  # fmt: skip

for _code, (_title, _explanation) in _TEXT.items():
    register(_code, _title, _explanation)
