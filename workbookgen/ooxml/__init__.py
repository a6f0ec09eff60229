"""What a whole .xlsx file says, brought to one spelling: names, settings, cells, looks, validations, charts."""
