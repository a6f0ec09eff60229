"""Reading and changing .xlsx files: names, settings, cells, styles, validations and charts, in one form."""
