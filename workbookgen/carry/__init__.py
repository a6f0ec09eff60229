"""Carrying a filled planner over to a newly built one, with nothing lost on the way."""
