"""From the description of a planner to a file: addresses, formulas, looks, bytes."""
