"""The colors of a planner, and whether they can be told apart.

The contrast of two colors is that of WCAG 2.1 (W3C Recommendation): the relative luminance of the lighter over that of
the darker, each with 0.05 added. Text needs 4.5 to 1 (1.4.3, level AA); the edges of inputs and other graphics need 3
to 1 (1.4.11). The settings may choose the colors in ROLES; the others are fixed, so that warnings look alike in every
planner.
"""

WHITE = "#FFFFFF"
INK, QUIET, WARNING = "#22211F", "#63615B", "#A5341F"
ACCENT, BAND, EDGE, GROUND = "#26466D", "#EFEDE6", "#94855A", "#F6F0E1"
HAIR, SOFT, STRAW = "#E3E0D7", "#A9BACF", "#CFC9B8"  # hairlines; what is expected; what is needed, or lost

ROLES = {"accent": ACCENT, "band": BAND, "edge": EDGE, "ground": GROUND}
FOR_TEXT, FOR_EDGES = 4.5, 3.0


def luminance(color: str) -> float:
    """Relative luminance of "#RRGGBB", 0 for black and 1 for white (WCAG 2.1, definition)."""
    shares = (int(color[place : place + 2], 16) / 255 for place in (1, 3, 5))
    red, green, blue = (share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4 for share in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio, from 1 for a color on itself to 21 for black on white."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def objections(chosen: dict[str, str]) -> dict[str, str]:
    """Role -> what is wrong with its color, if these colors are chosen for some of the ROLES."""
    color = ROLES | chosen
    faults = {}
    for role, ground, on, least, what in (
        ("accent", WHITE, "on white", FOR_TEXT, "a heading"),
        ("band", INK, "under the text", FOR_TEXT, "text"),
        ("ground", INK, "under the text", FOR_TEXT, "text"),
        ("edge", WHITE, "on white", FOR_EDGES, "the edge of a cell"),
        ("edge", color["ground"], f"on the ground {color['ground']}", FOR_EDGES, "the edge of a cell"),
    ):
        ratio = contrast(color[role], ground)
        if ratio < least:
            has = f"{color[role]} {on} has a contrast of {int(ratio * 100) / 100:.2f} to 1"
            instead = f"choose a {'lighter' if ground == INK else 'darker'} color"
            faults.setdefault(role, f"{has}, and {what} needs {least:g} to 1; {instead}")
    return faults
