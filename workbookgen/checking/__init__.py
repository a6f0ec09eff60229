"""Holding a planner against the reference library: scenarios, expected values, findings."""
