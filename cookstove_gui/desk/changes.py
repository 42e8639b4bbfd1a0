"""What the desk tells: which kinds of thing changed, and what became of an entry."""

from dataclasses import dataclass

from cookstove_gui.stove.entries import Entry


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """Which kinds of thing changed; a view redraws only for those that concern it."""

    log: bool = False
    standing: bool = False
    session: bool = False
    stove: bool = False
    band: bool = False
    walk: bool = False
    settings: bool = False
    study: bool = False
    supper: bool = False  # the meal that is planned, or its plan

    def __or__(self, other: "Changed") -> "Changed":
        """What changed in one announcement or the other."""
        return Changed(
            log=self.log or other.log,
            standing=self.standing or other.standing,
            session=self.session or other.session,
            stove=self.stove or other.stove,
            band=self.band or other.band,
            walk=self.walk or other.walk,
            settings=self.settings or other.settings,
            study=self.study or other.study,
            supper=self.supper or other.supper,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """An entry that is on disk by now, and a question about it if its number is unlikely."""

    entry: Entry
    question: str = ""
