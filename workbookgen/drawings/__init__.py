"""Drawings of our own, as PNG files; `draw` makes them, and a planner shows them beside what they explain."""
