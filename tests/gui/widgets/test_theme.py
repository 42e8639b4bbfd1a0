"""Both themes keep the contrasts of WCAG 2.2, computed from the theme's own colours."""

import pytest

from cookstove_gui.gui.widgets.theme import (
    DAY,
    EDGE_PAIRS,
    NIGHT,
    TEXT_PAIRS,
    Theme,
    style_sheet,
)
from cookstove_gui.stove.drawn.contrast import contrast, text_on
from cookstove_gui.stove.drawn.heat_colours import ON_IRON

THEMES = pytest.mark.parametrize("theme", [DAY, NIGHT], ids=lambda theme: theme.name)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [("#000000", "#FFFFFF", 21.0), ("#767676", "#FFFFFF", 4.5422)],
    ids=["black on white", "the greyest grey that passes"],
)
def test_contrast_is_that_of_wcag(one: str, other: str, expected: float) -> None:
    # Row "15.1": WCAG 2.2, contrast ratio; the grey is commonly quoted as the lightest that passes AA on white.
    assert contrast(one, other) == pytest.approx(expected, abs=1e-4)


def test_contrast_does_not_ask_which_comes_first() -> None:
    assert contrast("#123456", "#FEDCBA") == contrast("#FEDCBA", "#123456")


@THEMES
@pytest.mark.parametrize(("text", "under"), TEXT_PAIRS, ids=lambda token: token)
def test_text_reaches_aa(theme: Theme, text: str, under: str) -> None:
    # row "15.text"
    assert contrast(getattr(theme, text), getattr(theme, under)) >= 4.5


@THEMES
@pytest.mark.parametrize(("edge", "under"), EDGE_PAIRS, ids=lambda token: token)
def test_edges_and_marks_reach_three_to_one(theme: Theme, edge: str, under: str) -> None:
    # row "15.edges"
    assert contrast(getattr(theme, edge), getattr(theme, under)) >= 3.0


@THEMES
def test_page_text_reaches_what_the_look_promises(theme: Theme) -> None:
    for token in ("ink", "soft", "ember", "verdigris", "cobalt"):
        assert contrast(getattr(theme, token), theme.ground) >= 5.9


@THEMES
@pytest.mark.parametrize(
    ("area", "mark", "percent"),
    [("band", "verdigris", 13), ("good", "verdigris", 34), ("good_faint", "verdigris", 14),
     ("caution_ground", "ember", 9)],
)  # fmt: skip
def test_quiet_areas_are_the_ground_with_a_share_of_their_mark(
    theme: Theme, area: str, mark: str, percent: int
) -> None:
    for start in (1, 3, 5):
        ground, tint, mixed = (int(getattr(theme, token)[start : start + 2], 16) for token in ("ground", mark, area))
        assert mixed == pytest.approx(ground + (tint - ground) * percent / 100, abs=1.5)


@THEMES
def test_words_on_iron_are_readable(theme: Theme) -> None:
    assert contrast(ON_IRON, theme.iron) >= 7


@THEMES
def test_style_sheet_uses_only_the_themes_colours(theme: Theme) -> None:
    import re

    known = {value.upper() for value in (getattr(theme, field) for field in Theme.__slots__) if value.startswith("#")}
    assert {found.upper() for found in re.findall(r"#[0-9A-Fa-f]{6}", style_sheet(theme))} <= known


@pytest.mark.parametrize("background", ["#101020", "#808080", "#F0F0D0", "#7A6F50"])
def test_ink_on_any_ground_is_readable(background: str) -> None:
    assert contrast(text_on(background), background) >= 4.5
