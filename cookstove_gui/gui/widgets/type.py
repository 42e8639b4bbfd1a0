"""The program's type: one open face that comes with the program, in three weights, at the size now wanted."""

from functools import cache
from weakref import WeakKeyDictionary

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from cookstove_gui.gui.widgets.steps import px

_fixed_widths: WeakKeyDictionary[QWidget, float] = WeakKeyDictionary()
_changed_roles: WeakKeyDictionary[QWidget, str] = WeakKeyDictionary()
BODY = 20  # names, tasks, keys [px of the design]
PLACE = 18  # places, times, captions of the plot
SMALL = 16  # ages, numbers of an axis
NUMBER = 30  # the oven now

# Size [px of the design] and weight of the words that a role names; all others are BODY, 400.
ROLES = {
    "next": (27, 600),
    "clock": (36, 700),
    "answer": (30, 600),
    "long_answer": (27, 600),
    "heading": (22, 600),
    "strong": (BODY, 600),
    "number": (32, 600),
    "unit": (24, 600),
    "way": (64, 400),
    "strong_main": (BODY, 600),
    "main": (22, 600),
    "good": (BODY, 600),
    "problem": (BODY, 600),
    "caution": (BODY, 600),
    "place": (PLACE, 400),
    "said": (PLACE, 400),
    "doubted": (PLACE, 600),
    "told": (17, 400),  # two lines of it fit in a row of keys at any size of text
    "refused": (17, 600),
    "small": (SMALL, 400),
    "small_caution": (SMALL, 400),
    "note": (SMALL, 400),
    "key": (14, 400),
    "huge": (112, 700),
    "large": (54, 600),
}

_WEIGHT = QFont.Tag("wght")
# Faces of the same kind, with figures of one width, should the program's own be missing.
_FALLBACKS = ["Noto Sans", "Segoe UI", "Lucida Grande", "Cantarell", "Ubuntu", "Verdana", "DejaVu Sans"]


@cache
def families() -> tuple[str, ...]:
    """The program's own face if it can be loaded, then others like it."""
    try:
        import fontpkg_source_sans_3 as face
    except ImportError:
        return tuple(_FALLBACKS)
    number = QFontDatabase.addApplicationFont(str(face.ROOT / "files" / "SourceSans3[wght].ttf"))
    own = QFontDatabase.applicationFontFamilies(number)[:1] if number >= 0 else []
    return (*own, *_FALLBACKS)


def font(size: float = BODY, weight: int = 400) -> QFont:
    """The type at a size [px of the design] and weight (400, 600 or 700). Ask again at each paint: steps change."""
    return QFont(_font(px(size), weight))


@cache
def _font(pixels: int, weight: int) -> QFont:
    made = QFont()
    made.setFamilies(families())
    made.setPixelSize(max(pixels, 1))
    # The program's own face is one variable file: asked for a weight beside its axis it would be made bold twice.
    if families()[0] in _FALLBACKS:
        made.setWeight(QFont.Weight(weight))
    made.setVariableAxis(_WEIGHT, weight)
    made.setFeature(QFont.Tag("tnum"), 1)
    return made


def fix_width(widget: QWidget, wide: float) -> None:
    """Keep a widget at a width [px of the design], now and after each change of size."""
    _fixed_widths[widget] = wide
    widget.setFixedWidth(px(wide))


def fit_widths() -> None:
    """Give the widgets of a fixed width that of the present size.

    Those known here and no others: Qt's list of all widgets holds half-destroyed ones, which end the program.
    """
    for widget, wide in list(_fixed_widths.items()):
        if isValid(widget):
            widget.setFixedWidth(px(wide))


def set_role(widget: QWidget, role: str) -> None:
    """Give a widget's words the type and colour of a role, now and after each change of size."""
    before = widget.property("role")
    if before != role:
        widget.setProperty("role", role)
        if widget.testAttribute(Qt.WidgetAttribute.WA_WState_Polished):
            widget.style().polish(widget)
    if role in ROLES or before in ROLES:
        widget.setFont(font(*ROLES.get(role, (BODY, 400))))
        if before is not None:
            _changed_roles[widget] = role


def keep_roles() -> None:
    """Give the words whose role has changed its type again: with a style sheet Qt gives back that of their first."""
    for widget, role in list(_changed_roles.items()):
        if isValid(widget):
            widget.setFont(font(*ROLES.get(role, (BODY, 400))))
