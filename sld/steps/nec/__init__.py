"""The steps of a project under the National Electrical Code that differ from those of IEC 60364.

They keep their ratings under the same symbols as far as these mean the same, so that labels, schedules and rules read
one ledger. What the code has no figure for is not rated: `sld/tables/profile_scope.csv` says so on the sheet.
"""
