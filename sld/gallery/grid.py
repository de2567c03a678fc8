"""A page for each country that there are grid rules of: every entry with its sign, its sources and what it is worth."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.gallery.markdown import GENERATED, code, plain, table_lines
from sld.grid import GENERIC, Country, country, known
from sld.grid.entry import AskedPaper, Condition, Entry, Limit
from sld.grid.evidence import Source, Standing
from sld.grid.notices import AskedNotice
from sld.grid.outcome import timing, told
from sld.grid.quantity import WORDS
from sld.grid.settings import Setting, SettingsSet

__all__ = ["grid_pages"]

_TOP = """# Grid rules

What the network operators of a country ask for is kept as data, one file a country in
[sld/grid/countries](../sld/grid/countries): procedures, duties, interface protection, imbalance, documents, points on
the diagram, settings and notices. `supply.country` selects the file. A country that has none is refused unless
`grid_rules: generic` stands beside it, which is EN 50549-1.

An entry is *confirmed* where one primary source of the edition in force says it, or two independent secondary ones
that agree; this is computed from its sources and cannot be written in a file. Everything else is to be confirmed by the
network operator before it is relied on, and is printed so. Where sources disagree, the cautious limit decides and both
are printed.

An operator or town that has it otherwise stands in a TOML file beside the spec, which `supply.grid_rules` names. It
replaces entries by the names in these pages, each with a reason, and is printed as such:

```toml
by = "whose rules they are"

[[replace]]
entry = "procedures.connect_and_notify"
reason = "where this is said"
days = 14
```
"""


def grid_pages() -> dict[str, str]:
    """Return the pages by file name: one for each country, one for the generic rules, and the overview."""
    rules = [country(code) for code in (*known(), GENERIC)]
    return {"grid-rules.md": _overview(rules)} | {_name(each): _page(each) for each in rules}


def _name(rules: Country) -> str:
    return f"grid-{rules.code}.md"


def _overview(rules: Iterable[Country]) -> str:
    rows = []
    for each in rules:
        entries = list(each.entries())
        confirmed = sum(entry.standing is Standing.CONFIRMED for entry in entries)
        rows.append(
            (
                f"[{each.code}]({_name(each)})",
                plain(each.book),
                str(len(list(each.limits()))),
                f"{confirmed} of {len(entries)}",
            )
        )
    heads = ("Country", "Rules", "Limits", "Entries confirmed")
    return "\n".join([GENERATED, "", _TOP, *table_lines(heads, rows)])


def _page(rules: Country) -> str:
    number = rules.supply_point
    lines = [GENERATED, "", f"# Grid rules: {rules.code}", "", plain(rules.book) + ".", ""]
    lines += [f"Back to the [overview](grid-rules.md). File: [{rules.code}.toml]({_file(rules)}).", ""]
    if number is not None:
        check = f"; check digit: {number.check}" if number.check else "; no check digit known here"
        lines += ["## Supply point number", "", f"{plain(number.called)}: {plain(number.described)}{check}.", ""]
    for title, group, entries in _groups(rules):
        if entries:
            lines += [f"## {title}", "", *table_lines(_HEADS, [_row(group, each) for each in entries])]
    lines += ["## Sources", "", *table_lines(("Name", "Mark", "Edition", "Where", "Seen on"), _sources(rules.sources))]
    return "\n".join(lines)


def _file(rules: Country) -> str:
    return f"../sld/grid/countries/{rules.code}.toml"


_HEADS = ("Entry", "Holds where", "What follows", "Clause, edition", "Sources", "Standing")


def _groups(rules: Country) -> Iterator[tuple[str, str, tuple[Entry, ...]]]:
    yield "Procedures, the first that holds", "procedures", rules.procedures
    yield "Duties", "duties", rules.duties
    yield "Interface protection, the first that holds", "interface", rules.interface
    yield "Imbalance", "imbalance", rules.imbalance
    yield "Documents asked for", "papers", rules.papers
    yield "Points on the diagram", "points", rules.points
    yield "Settings sets", "sets", rules.sets
    yield "Settings", "settings", rules.settings
    yield "Notices at the site", "notices", rules.notices


def _row(group: str, entry: Entry) -> tuple[str, ...]:
    return (
        code(f"{group}.{entry.name}"),
        plain(_conditions(entry)),
        plain(_follows(entry)),
        plain(str(entry.cited)),
        ", ".join(entry.sources),
        str(entry.standing.phrase),
    )


def _conditions(entry: Entry) -> str:
    when: tuple[Condition, ...] = ()
    said: list[str] = []
    if isinstance(entry, Limit):
        when = entry.when
        said += [f"{entry.phases} phase{'s' if entry.phases != 1 else ''}"] if entry.phases else []
    elif isinstance(entry, AskedPaper | SettingsSet | AskedNotice):
        when = entry.when
    said += [f"{WORDS[each.quantity]} {each.sign.printed} {each.amount}" for each in when]
    if isinstance(entry, Limit):
        said += [
            f"({other.source}: {other.sign.printed} {other.limit:g} {when[0].unit})" for other in entry.differs if when
        ]
    return "; ".join(said) or "always"


def _follows(entry: Entry) -> str:
    match entry:
        case Limit():
            words = [str(told(entry.outcome)), entry.form or "", str(timing(entry.outcome).said(entry.days))]
            share = [f"{entry.share_percent:g} %"] if entry.share_percent is not None else []
            return "; ".join(word for word in [*words, *share] if word)
        case Setting():
            after = f", {entry.time_s:g} s" if entry.time_s is not None else ""
            return f"{entry.function.phrase}: {entry.value:g} {entry.unit}{after} ({', '.join(entry.sets)})"
        case SettingsSet():
            return entry.called
        case AskedNotice():
            places = ", ".join(each.value for each in entry.at).replace("_", " ")
            return f"{entry.notice.phrase}; at: {places}"
        case AskedPaper():
            return f"{entry.paper.phrase}{f' ({entry.form})' if entry.form else ''}"
    return str(entry.point.phrase) if hasattr(entry, "point") else ""


def _sources(sources: dict[str, Source]) -> Iterator[tuple[str, ...]]:
    for name, each in sources.items():
        where = ", ".join(word for word in (each.publisher, each.address) if word)
        seen = each.seen_on.isoformat() if each.seen_on else ""
        yield code(name), each.mark, plain(each.edition), plain(where) or "nothing was seen", seen
