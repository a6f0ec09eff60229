"""How thick a yarn is by its K: the threads of a grist of 1 yd/lb that lie side by side in an inch.

Formulas compute in meters and grams, so the grist is brought back to yards per pound, and inches become meters.
"""

K_WRAPPED = "or_else(thickness_k_wrapped, 0.35)"  # without the sheet Counts, the usual K


def threads(k: str, grist: str) -> str:
    """Formula text of the threads of this grist that lie side by side in a length."""
    return f"{k} * {_root(grist)} / 0.0254"


def fitted(wraps: str, grist: str) -> str:
    """Formula text of the K that these wraps and this grist have."""
    return f"{wraps} * 0.0254 / {_root(grist)}"


def width(k: str, grist: str) -> str:
    """Formula text of the width that one thread of this grist takes."""
    return f"0.0254 / ({k} * {_root(grist)})"


def _root(grist: str) -> str:
    return f"SQRT({grist} * 453.59237 / 0.9144)"
