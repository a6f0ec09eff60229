"""Carrying a filled planner over to a newly built one, without losing anything on the way."""
