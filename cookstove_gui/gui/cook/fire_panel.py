"""What was done to the fire: a button and a function key each, with a small chooser in place."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from cookstove_gui.cooking.safety.cautions import loading_order
from cookstove_gui.desk import Receipt
from cookstove_gui.desk.cook.into_the_oven import named_bake, offered_in, offered_out
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import InputProblem, Problem
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.gui.widgets.chooser import Answer, Chooser
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import parse_number, tidy

_PER_ROW = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class FireButton:
    """Something done at the stove."""

    kind: Kind
    word: str
    key: str
    what: str
    question: str = ""
    answers: tuple[Answer, ...] = ()
    field_hint: str = ""


_IN, _OUT = "in", "out"  # of the oven


def _numbered(*pairs: tuple[str, str]) -> tuple[Answer, ...]:
    return tuple(Answer(key=str(number), words=words, value=value) for number, (words, value) in enumerate(pairs, 1))


BUTTONS = (
    FireButton(kind=Kind.LIT, word="Lit", key="F5", what="The fire was lit"),
    FireButton(
        kind=Kind.WOOD,
        word="Wood",
        key="F6",
        what="Wood was added",
        question="Wood",
        answers=_numbered(
            ("split", "one split"), ("splits", "two splits"), ("splits", "three splits"), ("kindling", "kindling")
        ),
        field_hint="or its weight",
    ),
    FireButton(
        kind=Kind.AIR,
        word="Air",
        key="F7",
        what="The air was set",
        question="Air",
        answers=_numbered(("shut", "0"), ("¼", "0.25"), ("½", "0.5"), ("¾", "0.75"), ("open", "1")),
    ),
    FireButton(
        kind=Kind.BYPASS,
        word="Bypass",
        key="F8",
        what="The oven bypass was set",
        question="Bypass",
        answers=_numbered(("closed", "0"), ("half", "0.5"), ("open", "1")),
    ),
    FireButton(
        kind=Kind.OVEN_DOOR,
        word="Door",
        key="F9",
        what="The oven door was opened or closed",
        question="Oven door",
        answers=_numbered(("open", "open"), ("closed", "closed")),
    ),
    FireButton(
        kind=Kind.PAN,
        word="Pan",
        key="F10",
        what="A pan was put on or taken off the lit-up spot, or something into or out of the oven",
        question="Pan",
        answers=_numbered(("on", "on"), ("off", "off"), ("into the oven", _IN), ("out of it", _OUT)),
    ),
    FireButton(kind=Kind.NOTE, word="Note", key="F11", what="Write a note", question="Note", field_hint="what"),
)


class FirePanel(QStackedWidget):
    """The buttons, replaced by the chooser while a question is open."""

    entered = Signal(object)  # Receipt
    refused = Signal(str)  # why not
    asking = Signal()  # the chooser came up
    left = Signal()  # the chooser was closed; the number field may take the keyboard back

    def __init__(self, desk: Desk, when: WhenField, keys_on: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keys_on = keys_on
        self._desk = desk
        self._when = when
        self._asking: FireButton | None = None
        self.setObjectName("fire_panel")
        self._build()

    def _build(self) -> None:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        row = QHBoxLayout()
        for number, button in enumerate(BUTTONS):
            if number % _PER_ROW == 0:
                row = QHBoxLayout()
                row.setSpacing(STEP // 2)
                column.addLayout(row)
            row.addWidget(self._button(button), len(button.word) + len(button.key))
        column.addStretch(1)
        self._chooser = Chooser()
        self._chooser.chosen.connect(self._enter)
        self._chooser.typed.connect(self._enter_typed)
        self._chooser.left.connect(self.leave)
        self.addWidget(page)
        self.addWidget(self._chooser)

    def _button(self, button: FireButton) -> QPushButton:
        made = Key(button.word, button.key)
        made.setObjectName(f"fire_{button.kind}")
        set_role(made, "fire")
        made.setAccessibleName(button.what)
        made.setToolTip(f"{button.what} ({button.key})")
        made.setAutoDefault(False)
        made.clicked.connect(lambda _checked=False: self._ask(button))
        # The keys belong to the surrounding panel, because this one may be hidden while a question is open.
        QShortcut(QKeySequence(button.key), self._keys_on).activated.connect(lambda: self._ask(button))
        return made

    def leave(self) -> None:
        """Back to the buttons."""
        self._asking = None
        self.setCurrentIndex(0)
        self.left.emit()

    def _ask(self, button: FireButton) -> None:
        if not button.question:
            self._record(lambda: self._desk.do(button.kind, at_text=self._when.text()))
            return
        self._asking = button
        spot = self._desk.walk.spot.label
        question = f"Pan, {spot}" if button.kind is Kind.PAN else button.question
        hint = f"{button.field_hint} in {self._desk.mass_unit}" if button.kind is Kind.WOOD else button.field_hint
        self._chooser.ask(question, button.answers, hint, loading_order() if button.kind is Kind.WOOD else "")
        self.asking.emit()
        self.setCurrentWidget(self._chooser)
        self._chooser.take_focus()

    def _ask_oven(self, way: str) -> None:
        """What went into the oven, or came out; the one thing in it comes out without being asked for."""
        try:
            names = offered_in(self._desk) if way == _IN else offered_out(self._desk)
        except InputProblem as problem:
            self.refused.emit(problem.sentence)
            self.leave()
            return
        if way == _OUT and len(names) == 1:
            at = self._when.text()
            self._record(lambda: self._desk.do(Kind.OVEN_OUT, note=names[0], at_text=at))
            return
        kind, question, hint = (
            (Kind.OVEN_IN, "Into the oven", "or its name") if way == _IN else (Kind.OVEN_OUT, "Out of the oven", "")
        )
        answers = _numbered(*((name, name) for name in names))
        self._ask(FireButton(kind=kind, word="", key="", what="", question=question, answers=answers, field_hint=hint))

    def _enter(self, value: str) -> None:
        asking = self._asking
        if asking is None:
            return
        at = self._when.text()
        if asking.kind is Kind.WOOD:
            self._record(lambda: self._desk.do(Kind.WOOD, note=value, at_text=at))
        elif value in (_IN, _OUT):
            self._ask_oven(value)
        elif asking.kind in (Kind.OVEN_IN, Kind.OVEN_OUT):
            self._record(lambda: self._desk.do(asking.kind, note=value, at_text=at))
        elif asking.kind is Kind.PAN:
            self._record(lambda: self._desk.do(Kind.PAN, value=value, spot=self._desk.walk.spot.name, at_text=at))
        else:
            self._record(lambda: self._desk.do(asking.kind, value=value, at_text=at))

    def _enter_typed(self, text: str) -> None:
        asking = self._asking
        if asking is None:
            return
        at = self._when.text()
        if asking.kind is Kind.NOTE:
            self._record(lambda: self._noted(text, at))
        elif asking.kind is Kind.OVEN_IN:
            self._record(lambda: self._desk.do(Kind.OVEN_IN, note=named_bake(text), at_text=at))
        else:
            self._record(lambda: self._weighed(text, at))

    def _noted(self, text: str, at: str) -> Receipt:
        if not text.strip():
            raise InputProblem("The note is empty; type what you want to remember, or press Escape.")
        return self._desk.do(Kind.NOTE, note=text.strip(), at_text=at)

    def _weighed(self, text: str, at: str) -> Receipt:
        unit: str = self._desk.mass_unit
        typed = text.strip().lower()
        for written in ("kg", "lb"):
            if typed.endswith(written):
                typed, unit = typed.removesuffix(written), written
        mass = parse_number(typed, "mass")
        return self._desk.do(Kind.WOOD, value=tidy(mass, 3), unit=unit, at_text=at)

    def _record(self, enter: Callable[[], Receipt]) -> None:
        try:
            receipt = enter()
        except Problem as problem:
            self.refused.emit(problem.sentence)
            return
        self._when.clear()
        self._asking = None
        self.setCurrentIndex(0)
        self.entered.emit(receipt)
