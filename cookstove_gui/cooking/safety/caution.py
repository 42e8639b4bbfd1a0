"""A caution in its words, and what it speaks against; which are due lies in `cautions.py`."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.resource_files import table


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution in full words, ending with who decides."""

    key: str
    title: str
    text: str
    urgent: bool
    spot: str = ""  # the spot it is about, if about one
    order: str = ""  # of a present danger: the one thing to do at once
    decides: str = ""  # the end of the text: who decides
    asks: tuple[str, ...] = ()  # the steps that it asks for
    against: tuple[str, ...] = ()  # the steps that nobody is to advise meanwhile
    place: str = ""  # label of that spot, where more than one caution of the kind is due

    @property
    def identity(self) -> tuple[str, str]:
        """What makes it this caution and no other, however its words change: a second hot pan is one more."""
        return self.key, self.spot

    @property
    def name(self) -> str:
        """Its title, with the spot where another of the kind is due."""
        return f"{self.title}: {self.place}" if self.place else self.title


def speak_against(cautions: Sequence[Caution], step: str) -> bool:
    """Whether a caution that is due speaks against a step: `wood`, `open air`, `shut air`, `close bypass`."""
    return any(step in caution.against for caution in cautions)


def loading_order() -> str:
    """What to do before the fire door is opened, and who decides; for whoever is about to add wood."""
    row = next(row for row in table("cautions.toml")["caution"] if row["key"] == "loading")
    return f"{row['text']} {row['decides']}"
