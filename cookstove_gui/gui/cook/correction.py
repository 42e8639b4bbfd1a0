"""An entry being corrected in the block: its value, its spot and its clock, saved in one step."""

from cookstove_gui.desk import Desk, Receipt
from cookstove_gui.desk.log.correcting import text_of
from cookstove_gui.gui.cook.entry_block import EntryBlock
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import clock_text


class Correction:
    """What stands in the fields belongs to an old entry meanwhile; the walk's clock comes back afterwards."""

    def __init__(self, block: EntryBlock, desk: Desk) -> None:
        self._block = block
        self._desk = desk
        self._pinned = ""  # the clock of the walk
        self._spot = ""
        self.row: Entry | None = None

    def begin(self, row: Entry) -> None:
        """Put an entry into the fields."""
        block = self._block
        if self.row is None:
            self._pinned = block.when.text() if block.when.is_pinned else ""
        self.row = row
        self.mean_spot(row.spot)
        clock, words = clock_text(row.at, row.offset_minutes), entry_words(row, self._desk.stove)
        block.heading.say("was", f"{words} at {clock}", f"{row.value or row.note} at {clock}")
        block.unit.setText(f"°{row.unit}" if row.kind is Kind.READING else "")
        block.number.setText(text_of(row))
        block.when.release()
        block.when.setText(clock)
        spots = " ↑ ↓ another spot." if row.spot else ""
        block.fire.say(f"Type what it should be, or its time (Ctrl+T).{spots} Enter saves, Esc leaves it.")
        block.take_focus()
        block.number.selectAll()

    def mean_spot(self, name: str) -> None:
        """The spot that the entry belongs to; what was no reading and no pan has none."""
        if self.row is None or (name and not self.row.spot):
            return
        self._spot = name
        spot = self._desk.stove.spot(name)
        self._block.heading.show_spot(f"correct {spot.label}" if spot else "correct")

    def walk(self, steps: int) -> None:
        """Mean the spot some steps further along the walk."""
        if self._spot:
            self.mean_spot(self._desk.walk.at(self._spot).moved_on(steps).spot.name)

    def save(self, text: str, spot: str = "") -> Receipt | None:
        """Put the corrected row in the old one's place."""
        row = self.row
        if row is None:
            return None
        at_text = self._block.when.text().strip()
        if at_text == clock_text(row.at, row.offset_minutes):
            at_text = ""
        receipt = self._desk.correct(row.number, text, spot=spot or self._spot, at_text=at_text)
        self.leave()
        return receipt

    def leave(self) -> None:
        """Leave the entry as it is."""
        self.row = None
        self._block.number.clear()
        self._block.when.release()
        if self._pinned:
            self._block.when.pin(self._pinned)
        self._block.fire.say("")
        self._block.heading.say("")
