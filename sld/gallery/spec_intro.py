"""The hand-written part of the page of the spec language; every YAML example in it is read by a test."""

from __future__ import annotations

from sld.spec.measure import kind_of, known

__all__ = ["INTRO", "SMALLEST", "UNITS", "unit_rows"]

SMALLEST = """\
project: {title: House on Mill Lane}
site: {temperature_min: -12 °C, temperature_max: 35 °C}
supply: {phases: 1, voltage: 230 V, earthing_system: TN-C-S}
types:
  modules:
    Plain 400:
      rated_power: 400 W
      open_circuit_voltage: 37.0 V
      short_circuit_current: 13.7 A
      mpp_voltage: 31.0 V
      mpp_current: 12.9 A
      voltage_coefficient: -0.27 %/K
  inverters:
    Small 3:
      rated_power: 3 kW
      phases: 1
      dc_voltage_max: 600 V
      mpp_voltage_min: 100 V
      mpp_voltage_max: 520 V
      inputs: [{current_max: 16 A, short_circuit_current_max: 22 A}]
inverters:
  roof:
    type: Small 3
    inputs:
      - strings: [{module: Plain 400, modules_in_series: 8}]
"""

UNITS = (
    "V mV kV uV", "A mA kA uA nA pA", "W kW MW GW mW", "VA kVA MVA GVA", "Wh kWh MWh GWh",
    "ohm mohm kohm Mohm Gohm uohm",
    "m mm cm km um ft in", "mm2 cm2 m2 km2 kcmil", "C", "%", "Hz kHz MHz GHz", "%/K", "V/K mV/K", "A/K mA/K",
    "bit/s kbit/s Mbit/s Gbit/s", "/km2/yr", "K·m/W", "eV", "Nm kNm", "s ms us ns min h", "A2s", "deg", "kg g mg",
)  # fmt: skip
"""The units that keys of a spec accept, one kind of quantity an entry."""

_SPELLED = {
    "deg": "; ° too",
    "C": "; written °C, ℃ or C",
    "ohm": "; Ω and ohms for ohm",
    "mm2": "; mm² and mm^2 for mm2; a gauge of North America as `10 AWG` or `1/0 AWG`",
    "W": "; Wp, kWp and MWp too",
    "bit/s": "; Bd, kBd and baud too",
    "%/K": "; also %/°C",
    "V/K": "; also V/°C, mV/°C",
    "A/K": "; also A/°C, mA/°C",
    "/km2/yr": "; also 1/km2/year",
}


def unit_rows() -> list[tuple[str, str]]:
    """Return a row for each kind of quantity: what it measures, and its units. Raises ValueError for an unknown one."""
    rows = []
    for group in UNITS:
        words = group.split()
        for word in words:
            known(word)
        kind = kind_of(words[0]) or "number per area and year"
        rows.append((kind, ", ".join(f"`{word}`" for word in words) + _SPELLED.get(words[0], "")))
    return rows


INTRO = f"""# The spec language

A spec describes one PV system in a text file. `sld check SPEC` says what is wrong with it, `sld draw SPEC` draws its
single-line diagram. This page has every block and every key.

## The smallest useful spec

```yaml
{SMALLEST}```

All that this leaves out is assumed or chosen, and said: each assumption is a finding, printed on the sheet.

## Form of the file

- The file is YAML in UTF-8, at most 2 MB, one spec a file. JSON works too, as YAML includes it.
- A block is `key: value` lines, indented with spaces, or `{{key: value, key: value}}` on one line. A list is lines that
  begin with `- `, or `[value, value]`. Comments begin with `#`.
- Unknown keys, and keys given twice, are refused. Anchors (`&`), aliases (`*`), tags (`!`) and the merge key (`<<`) are
  refused: what is used more than once is written as a type (see below).
- `true` and `false` are the only words that are not text. `yes`, `no` and `on` are text.
- A value that is all digits is a number. Where the form says "text" it needs quotes: `number: "88214"`,
  `model: "410"`, `test_class: "2"`, `reference: "2026"`.
- A text also needs quotes if it begins with one of `@ % * & ! | > [ {{ # - ?` or a backquote, or if it holds a colon
  or a number sign with a space beside it; inside `{{ }}` and `[ ]` also if it holds a comma or a bracket:
  `orientation: "south, 30°"`. If in doubt, use quotes.
- Dates are written `2026-03-31`, without quotes.

In the tables below, a path such as `inverters.NAME.inputs[].strings[]` says where a block stands: `NAME` is a name
that you choose, `[]` is an entry of a list.

## Quantities

A quantity is a number and a unit, `25 m`, `0.4 kV`, `-0.26 %/K`, or a bare number, which is in the unit that the
table states: for `rated_power` of an inverter `4 kW`, `4000 W` and `4000` are the same. The unit must be one of the
same kind: active power is in W, apparent power in VA, and neither is taken for the other. Decimals have a point;
thousands are not parted (`1500`, not `1,500`). Quantities need no quotes. Where the form says "unit required", as for
temperature coefficients, a bare number is refused. Every unit that is accepted stands in the table at the end of this
introduction.

The tables show for each quantity an example and, where there is one, the range that is usual for it. A value outside,
and a few values that do not go together (fill factor of a module, array power over inverter power, ...), are refused
with a question, because a slip of one digit or prefix can hide a danger. A value that is meant all the same is accepted
in writing (see below) with `code: SP41` and `at` the path of its very key, `types.modules.NAME.voltage_coefficient`; it
is then used, and printed with the reason.

## Names and references

Boards, junction boxes, inverters, batteries, loads, generators, data devices and types are written under a name: the
key of their block. Any text can be a name; letters, digits and `_` read best. Boards, junction boxes, inverters,
batteries, loads, generators, data devices and every `id` share one space of names, so none may be used twice. Types are
apart: each group under `types` has its own names.

| Key | Refers to |
| --- | --- |
| `type` of an inverter | `types.inverters` |
| `module` of a string | `types.modules` |
| `type` of a cable | `types.cables` |
| `type` of a device in an AC circuit | `types.ac_devices`, with the same `kind` |
| `type` of a device in a DC circuit, or of `string_fuses` | `types.dc_devices`, with the same `kind` |
| `cable` of a data chain | `types.cables`, or free text that is printed as it is |
| `connected_to` | `boards` |
| `fed_from` | `boards`, or `further_supplies` |
| `enclosure` in an AC circuit | `boards` |
| `enclosure` in a DC circuit, `junction_box` | `junction_boxes` |
| `type` of a device between a battery and its converter | `types.battery_devices`, with the same `kind` |
| `inverter` of a battery | `inverters` |
| `fed_from_backup` of a board | `inverters` whose type has `backup` |
| `second_source` of a `changeover` | `generators`, or `inverters` whose type has `backup` |
| `location` | `site.locations`, if there are any; else free text |
| `device`, `master`, `shield_earthed_at`, `from`, `to` | any device with a name, any `id` |

An `id` is needed only for a device that has no name of its own, for example a meter in a circuit that is part of a
data chain. `connected_to` can be left out while there is at most one board. An inverter with `count: 3` under the
name `east` stands for `east-1`, `east-2` and `east-3`, which have the same circuit and the same strings each; `data`
may name one of them, or all of them as `east`.

A type gives the values of a data sheet once. What a device of a circuit says itself overrides what its type says.

## Types files

`include: [types/makes.yaml]` takes the types of other files. The path is relative to the folder of the spec, and the
file must be in that folder or below it (`--allow-outside` lifts this). Such a file holds the key `types` and nothing
else, includes no other file, and may not define a type that is there already.

## Circuits and their order

An AC circuit is a list of devices and cables, each with its `kind`. It is written from the side of the network, in
the order in which they are wired:

| Circuit of | From | To |
| --- | --- | --- |
| the main board, or one that is `fed_from` a further supply | the supply point, behind the service fuse | its busbar |
| another board | the busbar of the board it is `fed_from` | its own busbar |
| a board that is `fed_from_backup` | the backup output of the inverter | its own busbar |
| a generator at a `changeover` | way II of that switch | the generator |
| an inverter, load or battery | the busbar of the board it is `connected_to` | the device |

The service fuse is not part of a circuit: it is `supply.service_fuse`. The site's own transformer is
`supply.transformer`.

Where a device sits follows from its position:

- before the first cable: in the board that the circuit comes from (of the main board's circuit: in the main board
  if there is no cable at all, else in no board);
- after the last cable of a board's circuit: in that board;
- after the last cable of another circuit, or between two cables: in no board, by itself;
- `enclosure: NAME` overrides all this.

A DC circuit, the `circuit` of an input, is written from the strings to the inverter: its first device is the one next
to the place where the strings are joined, its last one next to the inverter. The cable of each string is its `cable`,
not part of the circuit; a fuse for each string is `string_fuses`. With `junction_box: NAME` the strings are joined in
that box, and the string fuses sit in it; other devices of the circuit sit in it if they say so with `enclosure`.

The `dc_circuit` of a battery is written from the battery to its converter, or to the inverter at whose battery
terminals it is. Without it nothing of the battery's direct current is drawn or checked, and a note says so.

A `changeover` stands in the `circuit` of the board that both sources feed. A `network_separation` stands where a part
with inverters of its own is cut off from the network.

A further connection of the site to the network stands under `further_supplies`, with `supply` and `earthing` of its
own; the board that it feeds is `fed_from` it, and all that this board feeds stands behind it. Each supply point is
computed, checked and drawn by itself, below the one before it: its fault level, limits, sums, boundary of ownership
and main earthing terminal are its own. Nothing may lead from one to another: a device, data cable or second source
behind another supply point is refused, and so is a board with two of them. A connection that is not on this drawing
is named under `other_supply_points` of `supply`.

```yaml
further_supplies:
  pump_house:
    supply: {{earthing_system: TT, service_fuse: 35 A}}
    earthing: {{electrode: {{kind: rod}}}}
boards:
  main: {{}}
  pump: {{fed_from: pump_house}}
```

`inputs` of an inverter is a list: its first entry is input 1. Strings of one entry are in parallel on one MPP
tracker. `inputs` of an inverter *type* lists the limits of the inputs in the same order; `count` repeats one.

```yaml
boards:
  main:
    circuit:
      - {{kind: meter, purpose: supply}}
      - {{kind: main_switch}}
  garage:
    fed_from: main
    circuit:
      - {{kind: breaker, rated_current: 32 A}}
      - {{kind: cable, length: 18 m, method: C}}
      - {{kind: main_switch}}
  office:
    fed_from: main
    circuit: [{{kind: breaker}}]
loads:
  wallbox:
    connected_to: garage
    power: 3.7 kW
    phases: 1
    charging_point: true
    circuit:
      - {{kind: rcbo, rated_current: 20 A, curve: C, residual_current: 30 mA, sensitivity: A}}
      - {{kind: cable, length: 6 m}}
```

Micro-inverters that share one AC branch are inverters, usually with a `count`, that are `connected_to` a board with
`trunk: true`: the trunk cable that they are plugged into. Its `circuit` begins with the device that protects it, and
their currents are summed along it; give their own `circuit: []`, or a cable where one leads to the trunk. Their type
says `micro: true`.

## What is left out is chosen or assumed

- Left-out ratings of breakers, fuses, switches and RCDs, and sections of cables, are *chosen*: the smallest standard
  value that meets the requirements. The sheet prints it with the reason. What you do write is *checked*, never changed.
- A left-out device or condition is *assumed*, and each assumption is said. Without a `circuit`: a meter and a main
  switch for the main board, a breaker for another board, a load or a battery, a breaker and an isolator for an
  inverter, a DC isolator for an input (unless its type says `dc_switch: true` or `plugs_disconnect: true`). Write
  `circuit: []` if there is truly nothing.
- Left out under `supply`, the fault current and the loop impedance are assumed from the earthing system. Ask the
  network operator for the true ones.
- No string fuse, RCD or surge protective device is added by itself: the findings say where one is needed.

## Accepting a deviation

A finding that is meant to stay is accepted in writing; it is then printed on the sheet with the reason, the role and
the date, and does not count for the exit code. `at` is the path of the place, with list entries counted from 0, or a
block around it, or the designation that the drawing prints. An acceptance that matches no finding is reported.

```yaml
accept:
  - code: AS01
    at: inverters.roof.inputs[0]
    reason: The isolator is part of the inverter, its data sheet is attached.
    role: design engineer
    date: 2026-03-31
```

## How devices talk

A chain is written in the order of its cable; `length` is that of the cable from the device before. Each end of a
chain is terminated.

```yaml
data:
  devices:
    logger: {{kind: logger}}
    router: {{kind: router, status: existing}}
  chains:
    bus:
      devices:
        - {{device: logger, terminated: true}}
        - {{device: roof, address: 1, length: 12 m, terminated: true}}
  links:
    - {{from: logger, to: router, medium: ethernet, length: 3 m}}
```

## Units
"""
