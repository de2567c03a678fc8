"""The formulas of the National Electrical Code (NFPA 70), for projects under that code only.

Sizes are names (`10`, `1/0`, `250`), areas are in mm². No copy of the code was opened: section numbers are those of the
2023 edition as public sources give them, from memory where the text says so.
"""
