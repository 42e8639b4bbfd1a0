"""Works out how the stove stands, in a thread; all that this takes is loaded there, after the first paint."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from cookstove_gui.one_road import Memory
    from cookstove_gui.situation import Inputs, Standing


class WorkingOut:
    """Inputs to standing, with the memory of the answer before."""

    def __init__(self) -> None:
        self._memory: Memory | None = None

    def __call__(self, inputs: Inputs) -> Standing:
        """How the stove stands and what is likely to come."""
        from cookstove_gui.one_road import Memory, work_out  # brings every computation: not before the first paint

        memory = self._memory = self._memory or Memory()
        return work_out(inputs, memory)

    def forget(self) -> None:
        """Begin with a fresh memory: a thread that was given up may still write to the old one."""
        self._memory = None
