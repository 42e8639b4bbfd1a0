"""What the desk announces in one turn is told once, and every kind of change arrives."""

from dataclasses import fields

from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.gui.desk_link import DeskLink


def test_changes_of_one_turn_are_told_once(desk: Desk, link: DeskLink, qtbot: QtBot) -> None:
    told: list[Changed] = []
    link.changed.connect(told.append)
    with qtbot.waitSignal(link.changed):
        desk.read("385")
        desk.set_unit("C")
    assert told == [Changed(log=True, walk=True, settings=True, session=told[0].session)]


def test_a_closed_link_tells_nothing(desk: Desk, link: DeskLink, qtbot: QtBot) -> None:
    link.close()
    with qtbot.assertNotEmitted(link.changed, wait=20):
        desk.read("385")


def test_every_kind_of_change_survives_the_gathering() -> None:
    for field in fields(Changed):
        one = Changed(**{field.name: True})
        assert one | Changed() == one
        assert Changed() | one == one
