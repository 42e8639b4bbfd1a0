"""What is shown: the latest standing that still answers what was asked."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from cookstove_gui.forecast.answers import LEAVE, Action

if TYPE_CHECKING:
    from cookstove_gui.cooking.safety.caution import Caution
    from cookstove_gui.situation import Inputs, Standing


class Shown:
    """The standing on the screen, and the number of the latest question; answers to older ones are stale."""

    def __init__(self) -> None:
        self.standing: Standing | None = None
        self.cautions: tuple[Caution, ...] = ()  # of the latest standing of this stove and session
        self.action: Action = LEAVE
        self._serial = 0

    def asked(self, inputs: Inputs) -> Inputs:
        """The inputs as the latest question, about the step chosen; makes every earlier question stale."""
        self._serial += 1
        return replace(inputs, serial=self._serial, action=self.action)

    def take(self, standing: Standing) -> bool:
        """Show a computation's result, unless it is stale."""
        if standing.serial != self._serial:
            return False
        self.standing, self.cautions = standing, standing.cautions
        return True

    def forget(self) -> None:
        """Show nothing; what is being computed is stale."""
        self.wait()
        self.cautions = ()

    def wait(self) -> None:
        """The same stove is worked out anew: what it is warned of stands until then."""
        self._serial += 1
        self.standing = None
        self.action = LEAVE
