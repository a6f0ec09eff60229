"""Simulated worlds, in which what the planner states must come true."""

import sys
from pathlib import Path

# What all tests share is found, too, where one of these modules is run as a command.
sys.path.insert(0, str(Path(__file__).parents[1]))
