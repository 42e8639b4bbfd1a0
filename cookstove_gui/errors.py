"""The few kinds of problem that a person is told about.

    Problem
    ├── InputProblem         what was typed or read from a file; the person can correct it
    └── SurroundingsProblem  disk, permissions, a damaged or too new file

Anything else that is raised is our own bug. The sentence always says what is wrong, where, and how to correct it.
"""


class Problem(Exception):
    """A problem put to the person in one clear sentence."""

    def __init__(self, sentence: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence


class InputProblem(Problem):
    """What was typed or read from a file cannot be used as it stands."""


class SurroundingsProblem(Problem):
    """The disk, its permissions or a stored file prevent it."""
