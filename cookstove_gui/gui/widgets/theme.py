"""The two looks, day and night: colours, the palette and style sheet made of them, and contrast by WCAG 2.2."""

from dataclasses import dataclass
from functools import cache

from PySide6.QtGui import QColor, QFont, QPalette

from cookstove_gui.resource_files import resource

BODY_POINTS = 16
NUMBER_POINTS = 22
NEXT_LINE_POINTS = 26
TARGET_PIXELS = 44  # smallest side of anything that is pressed
STEP = 8  # spacing goes in steps of this many pixels

# Humanist sans faces whose plain figures are all of one width, the first that the system has.
_FAMILIES = ["Noto Sans", "Segoe UI", "Lucida Grande", "Cantarell", "Ubuntu", "Verdana", "DejaVu Sans"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """Colours as #RRGGBB."""

    name: str
    ground: str  # the page
    raised: str  # fields and buttons
    plate: str  # the iron of the drawn stove
    line: str  # edges of what can be pressed or typed in
    faint: str  # grid and rules that carry no meaning of their own
    ink: str
    soft_ink: str  # ages, units, captions
    ember: str  # the one thing to do now, cautions
    spruce: str  # target band, good now
    slate: str  # belief, projection


DAY = Theme(
    name="day",
    ground="#FAF6EE",
    raised="#FFFDF9",
    plate="#E9E1D2",
    line="#857A6B",
    faint="#DDD4C3",
    ink="#231F1A",
    soft_ink="#5A5248",
    ember="#A63C12",
    spruce="#2F6650",
    slate="#355C7D",
)
NIGHT = Theme(
    name="night",
    ground="#1D1F21",
    raised="#282B2E",
    plate="#303437",
    line="#85807A",
    faint="#3C4043",
    ink="#F2ECE1",
    soft_ink="#B9B2A5",
    ember="#FF9B6A",
    spruce="#86C9A8",
    slate="#9CC3E6",
)

# Every pair of text and what it stands on, by token; all must reach 4.5 : 1.
TEXT_PAIRS = (
    *(
        (text, under)
        for text in ("ink", "soft_ink", "ember", "spruce", "slate")
        for under in ("ground", "raised", "plate")
    ),
    ("ground", "ember"),
    ("ground", "spruce"),
    ("ground", "ink"),
)
# Edges and marks that must be told from what is beside them: 3 : 1.
EDGE_PAIRS = (("line", "ground"), ("line", "raised"), ("ember", "ground"), ("spruce", "ground"), ("slate", "ground"))


def relative_luminance(colour: str) -> float:
    """Relative luminance (0 to 1) of an sRGB colour #RRGGBB. Source: WCAG 2.2, definition of relative luminance."""

    def linear(channel: int) -> float:
        share = channel / 255
        return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)

    red, green, blue = (linear(int(colour[start : start + 2], 16)) for start in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio (1 to 21) of two colours. Source: WCAG 2.2, definition of contrast ratio."""
    lighter, darker = sorted((relative_luminance(one), relative_luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def text_on(background: str) -> str:
    """Black or white, whichever reads better; between them every colour is written on at 4.58 : 1 at least."""
    return max(("#000000", "#FFFFFF"), key=lambda ink: contrast(ink, background))


def colour(value: str, alpha: int = 255) -> QColor:
    """A token as a Qt colour, `alpha` from 0 (clear) to 255."""
    made = QColor(value)
    made.setAlpha(alpha)
    return made


@cache
def font(points: int = BODY_POINTS, *, bold: bool = False) -> QFont:
    """The program's type at a size, with figures of one width."""
    made = QFont()
    made.setFamilies(_FAMILIES)
    made.setPointSize(points)
    made.setBold(bold)
    made.setFeature(QFont.Tag("tnum"), 1)
    return made


def palette(theme: Theme) -> QPalette:
    """What Qt itself paints with."""
    roles = {
        QPalette.ColorRole.Window: theme.ground,
        QPalette.ColorRole.WindowText: theme.ink,
        QPalette.ColorRole.Base: theme.raised,
        QPalette.ColorRole.AlternateBase: theme.ground,
        QPalette.ColorRole.Text: theme.ink,
        QPalette.ColorRole.Button: theme.raised,
        QPalette.ColorRole.ButtonText: theme.ink,
        QPalette.ColorRole.ToolTipBase: theme.raised,
        QPalette.ColorRole.ToolTipText: theme.ink,
        QPalette.ColorRole.PlaceholderText: theme.soft_ink,
        QPalette.ColorRole.Highlight: theme.slate,
        QPalette.ColorRole.HighlightedText: theme.ground,
        QPalette.ColorRole.Link: theme.slate,
    }
    made = QPalette()
    for role, value in roles.items():
        made.setColor(role, QColor(value))
    return made


def style_sheet(theme: Theme) -> str:
    """One sheet for the whole window; a widget's `role` property picks its type and colour."""
    t = theme
    arrow = resource("icons", f"down_{t.name}.svg").as_posix()
    return f"""
    QWidget {{ color: {t.ink}; font-size: {BODY_POINTS}pt; }}
    QMainWindow, QWidget#page {{ background: {t.ground}; }}
    QToolTip {{ background: {t.raised}; color: {t.ink}; border: 1px solid {t.line}; padding: 4px; }}
    QLabel[role="soft"] {{ color: {t.soft_ink}; }}
    QLabel[role="heading"] {{ font-weight: 600; }}
    QLabel[role="good"] {{ color: {t.spruce}; font-weight: 600; }}
    QLabel[role="next"] {{ font-size: {NEXT_LINE_POINTS}pt; font-weight: 600; }}
    QLabel[role="number"] {{ font-size: {NUMBER_POINTS}pt; font-weight: 600; }}
    QLabel[role="problem"] {{ color: {t.ember}; font-weight: 600; }}
    QLabel[role="caution"] {{ color: {t.ember}; }}
    QLabel[role="huge"] {{ font-size: 84pt; font-weight: 600; }}
    QLabel[role="large"] {{ font-size: 40pt; font-weight: 600; }}
    QLabel[role="belief"] {{ color: {t.slate}; }}
    QPushButton, QToolButton {{
        background: {t.raised}; border: 1px solid {t.line}; border-radius: 6px;
        padding: 2px 10px; min-height: {TARGET_PIXELS - 6}px; outline: none;
    }}
    QPushButton:hover, QToolButton:hover {{ border-color: {t.ink}; }}
    QPushButton:focus, QToolButton:focus {{ border: 3px solid {t.slate}; padding: 0px 8px; }}
    QPushButton:pressed, QToolButton:pressed {{ background: {t.plate}; }}
    QPushButton:disabled, QToolButton:disabled {{ color: {t.soft_ink}; border-color: {t.faint}; }}
    QPushButton:checked, QToolButton:checked {{
        background: {t.ink}; color: {t.ground}; border-color: {t.ink};
    }}
    QPushButton[role="main"] {{
        background: {t.spruce}; color: {t.ground}; border-color: {t.spruce}; font-weight: 600;
    }}
    QPushButton[role="fire"] {{ padding: 2px 6px; }}
    QPushButton[role="fire"]:focus {{ padding: 0px 4px; }}
    QPushButton[role="unit"] {{
        background: transparent; border-color: transparent; padding: 2px 4px; min-width: {TARGET_PIXELS - 10}px;
        font-size: {NUMBER_POINTS}pt; font-weight: 600;
    }}
    QPushButton[role="unit"]:focus {{ border: 3px solid {t.slate}; padding: 0px 2px; }}
    QPushButton[role="quiet"] {{ background: transparent; border-color: transparent; }}
    QPushButton[role="quiet"]:focus {{ border: 3px solid {t.slate}; }}
    QLineEdit, QPlainTextEdit, QComboBox, QSpinBox, QDoubleSpinBox {{
        background: {t.raised}; border: 1px solid {t.line}; border-radius: 6px;
        padding: 2px 8px; min-height: {TARGET_PIXELS - 6}px;
        selection-background-color: {t.slate}; selection-color: {t.ground};
    }}
    QLineEdit:focus, QPlainTextEdit:focus, QComboBox:focus, QSpinBox:focus, QDoubleSpinBox:focus {{
        border: 3px solid {t.slate}; padding: 0px 6px;
    }}
    QLineEdit[role="number"] {{ font-size: {NUMBER_POINTS}pt; font-weight: 600; min-height: 50px; }}
    QComboBox::drop-down {{ border: none; width: 30px; }}
    QComboBox::down-arrow {{ image: url("{arrow}"); width: 16px; height: 16px; }}
    QComboBox QAbstractItemView {{
        background: {t.raised}; color: {t.ink}; border: 1px solid {t.line};
        selection-background-color: {t.slate}; selection-color: {t.ground};
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
    QTableView::indicator:checked {{ background: {t.spruce}; border-color: {t.ink}; }}
    QListView:focus, QTableView:focus, QTreeView:focus {{ border: 2px solid {t.slate}; border-radius: 6px; }}
    QHeaderView::section {{
        background: {t.ground}; color: {t.soft_ink}; border: none; border-bottom: 1px solid {t.faint}; padding: 6px;
    }}
    QScrollArea {{ background: transparent; border: none; }}
    QScrollArea > QWidget > QWidget {{ background: transparent; }}
    QScrollBar:vertical {{ background: transparent; width: 14px; }}
    QScrollBar:horizontal {{ background: transparent; height: 14px; }}
    QScrollBar::handle {{ background: {t.line}; border-radius: 5px; margin: 2px; min-height: 32px; min-width: 32px; }}
    QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
    QProgressBar {{
        background: {t.raised}; border: 1px solid {t.line}; border-radius: 6px; text-align: center; min-height: 28px;
    }}
    QProgressBar::chunk {{ background: {t.plate}; border-radius: 5px; }}
    QCheckBox, QRadioButton {{ min-height: {TARGET_PIXELS}px; spacing: 10px; }}
    QFrame[role="strip"] {{ background: {t.plate}; border-radius: 8px; }}
    """
