"""The guide's picture of the rooms is the code's own."""

from tests.rooms import GUIDE, guide_with, picture


def test_the_guide_shows_the_rooms_as_they_are() -> None:
    assert guide_with(picture()) == GUIDE.read_text("utf-8"), "run python -m tests.rooms"
