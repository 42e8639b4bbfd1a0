"""The two looks, day and night: their colours, and the palette and style sheet made of them."""

from dataclasses import dataclass, replace

from PySide6.QtGui import QColor, QPalette

from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, ROLES
from cookstove_gui.resource_files import resource

TARGET_PIXELS = 44  # smallest side of anything that is pressed
STEP = 8  # spacing goes in steps of this many pixels
SOFT = QPalette.ColorRole.LinkVisited  # where painters find the soft ink: a sheet's colour overwrites PlaceholderText


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """Colours as #RRGGBB. Warm ones mean heat or danger and nothing else."""

    name: str
    ground: str  # the page
    raised: str  # fields
    plate: str  # keys, the chosen row
    faint: str  # hairlines that carry nothing
    line: str  # a field's edge, a key's lower edge, the axis, the fan's edge
    ink: str  # words, belief, projection, the main key
    soft: str  # ages, units, places
    verdigris: str  # the heat wanted, its arrival, "good"
    cobalt: str  # where the hand is: focus; the what-if
    ember: str  # cautions and questions, always with a sign and words
    iron: str  # the drawn stove's body
    iron_edge: str  # its outline
    band: str  # the heat wanted, as an area: ground with 13 % verdigris
    good: str  # a good chance, as an area: ground with 34 % verdigris
    good_faint: str  # a small chance, as an area: ground with 14 % verdigris
    caution_ground: str  # under a caution: ground with 9 % ember


DAY = Theme(
    name="day",
    ground="#F2F3EF",
    raised="#FFFFFF",
    plate="#E2E5DF",
    faint="#D3D7D0",
    line="#767C7A",
    ink="#1C2022",
    soft="#4E5558",
    verdigris="#17655A",
    cobalt="#1B4F9C",
    ember="#A5330A",
    iron="#2A2B2C",
    iron_edge="#2A2B2C",
    band="#D6E1DC",
    good="#A8C3BC",
    good_faint="#D3DFDA",
    caution_ground="#EBE2DA",
)
NIGHT = Theme(
    name="night",
    ground="#121415",
    raised="#1E2123",
    plate="#25292B",
    faint="#33393B",
    line="#7D8583",
    ink="#ECEEE8",
    soft="#A8B0AE",
    verdigris="#74CDB8",
    cobalt="#8DBBF7",
    ember="#FF9C6C",
    iron="#232628",
    iron_edge="#565D5E",
    band="#1F2C2A",
    good="#33534C",
    good_faint="#202E2C",
    caution_ground="#27201D",
)


def plainer(theme: Theme) -> Theme:
    """The same with more contrast, for those whose system asks for it: nothing soft, every edge in ink."""
    return replace(theme, soft=theme.ink, line=theme.ink, faint=theme.line, iron_edge=theme.line)


# Every pair of text and what it stands on, by token; all must reach 4.5 : 1.
TEXT_PAIRS = (
    *(
        (text, under)
        for text in ("ink", "soft", "verdigris", "cobalt", "ember")
        for under in ("ground", "raised", "plate")
    ),
    *((text, "caution_ground") for text in ("ink", "soft", "ember")),
    ("verdigris", "band"),
    ("ink", "band"),
    ("ink", "good"),
    ("ink", "good_faint"),
    ("ground", "ink"),
    ("ground", "ember"),
    ("ground", "cobalt"),
    ("ground", "verdigris"),
)
# Edges and marks that must be told from what is beside them: 3 : 1.
EDGE_PAIRS = (
    *(("line", under) for under in ("ground", "raised", "plate")),
    *((mark, "ground") for mark in ("ember", "verdigris", "cobalt", "ink")),
    ("cobalt", "plate"),
    ("verdigris", "good_faint"),
)


def colour(value: str, alpha: int = 255) -> QColor:
    """A token as a Qt colour, `alpha` from 0 (clear) to 255."""
    made = QColor(value)
    made.setAlpha(alpha)
    return made


def palette(theme: Theme) -> QPalette:
    """What Qt itself paints with."""
    roles = {
        QPalette.ColorRole.Window: theme.ground,
        QPalette.ColorRole.WindowText: theme.ink,
        QPalette.ColorRole.Base: theme.raised,
        QPalette.ColorRole.AlternateBase: theme.ground,
        QPalette.ColorRole.Text: theme.ink,
        QPalette.ColorRole.Button: theme.plate,
        QPalette.ColorRole.ButtonText: theme.ink,
        QPalette.ColorRole.Mid: theme.line,
        QPalette.ColorRole.BrightText: theme.ember,
        QPalette.ColorRole.ToolTipBase: theme.raised,
        QPalette.ColorRole.ToolTipText: theme.ink,
        QPalette.ColorRole.PlaceholderText: theme.soft,
        QPalette.ColorRole.Highlight: theme.cobalt,
        QPalette.ColorRole.HighlightedText: theme.ground,
        QPalette.ColorRole.Link: theme.cobalt,
        SOFT: theme.soft,
    }
    made = QPalette()
    for role, value in roles.items():
        made.setColor(role, QColor(value))
    made.setColor(QPalette.ColorGroup.Disabled, QPalette.ColorRole.ButtonText, QColor(theme.soft))
    return made


def style_sheet(theme: Theme) -> str:
    """One sheet for the whole window; a widget's `role` property picks its type and colour."""
    t = theme
    arrow = resource("icons", f"down_{t.name}.svg").as_posix()
    # Sizes only: weights are an axis of the face, which a sheet cannot set.
    sizes = "\n    ".join(f'*[role="{role}"] {{ font-size: {px(size)}px; }}' for role, (size, _) in ROLES.items())
    return f"""
    QWidget {{ color: {t.ink}; font-size: {px(BODY)}px; }}
    {sizes}
    QMainWindow, QWidget#page {{ background: {t.ground}; }}
    QToolTip {{ background: {t.raised}; color: {t.ink}; border: 1px solid {t.line}; padding: 4px; }}
    QLabel[role="soft"], QLabel[role="note"], QLabel[role="way"] {{ color: {t.soft}; }}
    QLabel[role="good"] {{ color: {t.verdigris}; }}
    QLabel[role="problem"] {{ color: {t.ember}; }}
    *[role="caution"], QLabel[role="small_caution"] {{ color: {t.ember}; }}
    QLabel[role="doubted"], QLabel[role="refused"] {{ color: {t.ember}; }}
    QLabel[role="place"], QLabel[role="told"] {{ color: {t.soft}; }}
    QMenu {{ background: {t.raised}; color: {t.ink}; border: 1px solid {t.line}; padding: 4px; }}
    QMenu::item {{ padding: 8px 24px; }}
    QMenu::item:selected {{ background: {t.plate}; }}
    QMenu::separator {{ height: 1px; background: {t.faint}; margin: 4px 12px; }}
    QLineEdit, QPlainTextEdit {{ placeholder-text-color: {t.soft}; }}
    QLineEdit, QPlainTextEdit, QSpinBox, QDoubleSpinBox {{
        background: {t.raised}; border: 1px solid {t.line}; border-radius: {px(4)}px;
        padding: 0px {px(10)}px; min-height: {px(TARGET_PIXELS) - 2}px;
        selection-background-color: {t.cobalt}; selection-color: {t.ground};
    }}
    QLineEdit:focus, QPlainTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus {{
        border: 3px solid {t.cobalt}; padding: 0px {px(10) - 2}px; min-height: {px(TARGET_PIXELS) - 6}px;
    }}
    QLineEdit[role="number"] {{ min-height: {px(56) - 2}px; }}
    QLineEdit[role="number"]:focus {{ min-height: {px(56) - 6}px; }}
    QComboBox {{
        background: {t.plate}; border: none; border-bottom: 2px solid {t.line}; border-radius: {px(4)}px;
        padding: 0px {px(12)}px; min-height: {px(TARGET_PIXELS) - 2}px;
        selection-background-color: {t.cobalt}; selection-color: {t.ground};
    }}
    QComboBox:focus {{ border: 3px solid {t.cobalt}; padding: 0px {px(9)}px; min-height: {px(TARGET_PIXELS) - 6}px; }}
    QComboBox QLineEdit, QComboBox QLineEdit:focus {{
        background: transparent; border: none; padding: 0px; min-height: 0px;
    }}
    QComboBox::drop-down {{ border: none; width: {px(34)}px; }}
    QComboBox::down-arrow {{ image: url("{arrow}"); width: {px(18)}px; height: {px(18)}px; }}
    QComboBox QAbstractItemView {{
        background: {t.raised}; color: {t.ink}; border: 1px solid {t.line};
        selection-background-color: {t.cobalt}; selection-color: {t.ground};
    }}
    QListView, QTableView, QTreeView {{
        background: transparent; border: none; outline: none; gridline-color: {t.faint};
        alternate-background-color: {t.raised};
    }}
    QListView::item, QTableView::item {{ padding: 2px 4px; }}
    QListView::item:selected, QTableView::item:selected {{ background: {t.plate}; color: {t.ink}; }}
    QTableView::indicator {{
        width: 20px; height: 20px; border: 2px solid {t.line}; border-radius: 4px; background: {t.raised};
    }}
    QTableView::indicator:checked {{ background: {t.verdigris}; border-color: {t.ink}; }}
    QListView:focus, QTableView:focus, QTreeView:focus {{ border: 2px solid {t.cobalt}; border-radius: 6px; }}
    QListView#good_for_rows, QListView#good_for_rows:focus {{ border: none; padding: 0; }}
    QListView#good_for_rows::item {{ padding: 0; }}
    QHeaderView::section {{
        background: {t.ground}; color: {t.soft}; border: none; border-bottom: 1px solid {t.faint}; padding: 6px;
    }}
    QScrollArea {{ background: transparent; border: none; }}
    QScrollArea > QWidget > QWidget {{ background: transparent; }}
    QScrollBar:vertical {{ background: transparent; width: 14px; }}
    QScrollBar:horizontal {{ background: transparent; height: 14px; }}
    QScrollBar::handle {{ background: {t.line}; border-radius: 4px; margin: 2px; min-height: 32px; min-width: 32px; }}
    QScrollBar::handle:vertical {{ margin: 2px 1px 2px 5px; }}
    QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
    QProgressBar {{
        background: {t.raised}; border: 1px solid {t.line}; border-radius: 6px; text-align: center; min-height: 28px;
    }}
    QProgressBar::chunk {{ background: {t.plate}; border-radius: 5px; }}
    QCheckBox, QRadioButton {{ min-height: {TARGET_PIXELS}px; spacing: 10px; }}
    QFrame[role="hairline"] {{ background: {t.faint}; }}
    QFrame[role="strip"] {{ background: {t.raised}; border-radius: {px(4)}px; }}
    """
