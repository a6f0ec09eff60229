"""Filled planners as people save them: what is in their cells, and what of it are entries."""
