"""Comparing a planner with the reference library: scenarios, expected values, findings."""
