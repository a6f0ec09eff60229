"""Filled planners, as people save them: what stands in their cells, and in their inputs."""
