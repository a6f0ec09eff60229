"""Filled planners, as people save them: the content of their cells, and of their inputs."""
