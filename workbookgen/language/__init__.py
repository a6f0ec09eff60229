"""How a sheet is described: quantities, domains, fields, formulas, and the parts of a sheet.

Everything here is a frozen dataclass, declared once and read by all that follows: the layout, the writer, the check,
the pages of the sheet Reference, the command. A mistake in a description is refused where it is written, not where it
would do harm.
"""
