"""What each sheet says: its fields, formulas and their references. One module per sheet or chapter."""
