"""Contrast by WCAG 2.1, and what is said of colors that are hard to see."""

import pytest

from workbookgen.colors import EDGE, GROUND, INK, ROLES, WHITE, contrast, luminance, objections

# Published ratios: black on white is 21 to 1 (WCAG 2.1, definition of contrast ratio); #777777 on white
# 4.48 and #767676 4.54, the grays around the limit of level AA (published contrast checkers; from memory).
PUBLISHED = [("#000000", 21.0), ("#FFFFFF", 1.0), ("#777777", 4.48), ("#767676", 4.54)]


@pytest.mark.parametrize(("color", "ratio"), PUBLISHED)
def test_contrast_on_white_is_as_published(color, ratio):
    assert round(contrast(color, WHITE), 2) == ratio
    assert contrast(color, WHITE) == contrast(WHITE, color)


def test_luminance_of_the_primaries():
    """The weights of red, green and blue in WCAG 2.1's definition of relative luminance."""
    assert [luminance(color) for color in ("#FF0000", "#00FF00", "#0000FF")] == pytest.approx([0.2126, 0.7152, 0.0722])
    assert (luminance("#000000"), luminance(WHITE)) == (0.0, pytest.approx(1.0))


def test_the_usual_colors_are_seen():
    assert objections({}) == {}
    assert all(objections({role: color}) == {} for role, color in ROLES.items())


# Role, a color that cannot be seen in it, how its sentence begins and ends. The ratio of #777777 is the published one,
# not rounded up.
SAID = [
    (
        "accent",
        "#777777",
        "#777777 on white has a contrast of 4.47 to 1, and a heading needs 4.5 to 1; ",
        "choose a darker color",
    ),
    (
        "accent",
        "#B0C4DE",
        "#B0C4DE on white has a contrast of 1.",
        "and a heading needs 4.5 to 1; choose a darker color",
    ),
    (
        "band",
        "#1D4E57",
        "#1D4E57 under the text has a contrast of 1.",
        "and text needs 4.5 to 1; choose a lighter color",
    ),
    (
        "ground",
        "#000000",
        "#000000 under the text has a contrast of 1.",
        "and text needs 4.5 to 1; choose a lighter color",
    ),
    (
        "edge",
        "#C9CFD3",
        "#C9CFD3 on white has a contrast of 1.",
        "and the edge of a cell needs 3 to 1; choose a darker color",
    ),
]


@pytest.mark.parametrize(("role", "color", "begins", "ends"), SAID)
def test_what_is_said(role, color, begins, ends):
    sentence = objections({role: color})[role]
    assert sentence.startswith(begins) and sentence.endswith(ends)


def test_an_edge_must_be_seen_on_the_chosen_ground():
    ground = "#E8D9A0"
    assert contrast(EDGE, GROUND) >= 3 > contrast(EDGE, ground) and contrast(INK, ground) >= 4.5
    said = objections({"ground": ground})
    assert set(said) == {"edge"} and f"{EDGE} on the ground {ground}" in said["edge"]
    assert objections({"ground": ground, "edge": "#5A4A20"}) == {}


def test_a_ratio_is_never_rounded_up_to_the_limit():
    """4.478 is told as 4.47, so that nobody reads of a limit that seems to be reached."""
    assert contrast("#777777", WHITE) == pytest.approx(4.478, abs=0.001)
