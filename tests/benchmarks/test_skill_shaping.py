"""A baker shapes when it is time by what was foretold last, and what waits is counted in minutes."""

import numpy as np
import pytest

from tests.benchmarks.skill_shaping import PROOF, Look, shaped_at


@pytest.mark.parametrize(
    ("looks", "at"),
    [
        ([Look(10.0, 80.0)], 80.0 - PROOF),  # nothing is read before it is time
        ([Look(10.0, 80.0), Look(30.0, 100.0)], 100.0 - PROOF),  # the later reading puts it off
        ([Look(10.0, 80.0), Look(40.0, 100.0)], 80.0 - PROOF),  # shaped before that reading came
        ([Look(10.0, 100.0), Look(40.0, 60.0)], 40.0),  # late already
        ([Look(10.0, np.inf), Look(40.0, 60.0)], 40.0),
        ([Look(10.0, np.inf)], np.inf),
    ],
)
def test_loaves_are_shaped_by_what_was_foretold_last(looks: list[Look], at: float) -> None:
    assert shaped_at(looks) == at
