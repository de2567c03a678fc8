"""The kinds of devices, one row each: spec block, class letters, word, symbol, and roles in an installation.

    row.py      what a row holds, and what differs with the values given
    role.py     what a device does, and which values it is certain to have for that
    ac.py dc.py units.py    the rows: apparatus of AC and of DC circuits; all that a circuit serves or is made of
    table.py    all rows, and the row of a block

What is to be known of a device is asked by role where any device of that role will do (`device.has(ISOLATION)`), by
kind where it is true of that kind alone (`device.kind is RCBO`); `device.given_as(...)` also returns the values.
"""
