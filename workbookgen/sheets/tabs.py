"""The names of the sheets, as their tabs show them.

A chapter's `SHEET` is one of these, and so is every sheet to which another leads; texts name chapters, and
`naming.py` puts in their sheets. So a sheet is renamed here alone.
"""

DESK = "Desk"
MEASURE, LOT, PROJECT = "Measure", "Lot", "Project"
SKEINS, REELS, FIBER, SAMPLES, PROJECTS = "Skeins", "Reels", "Fiber", "Samples", "Projects"
YARN, NEED, FLEECE, TWIST, TIME = "Yarn", "Need", "Fleece", "Twist", "Time"
PRINT, REFERENCE = "Print", "Reference"
