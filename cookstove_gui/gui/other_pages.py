"""The pages beside Cook, each imported and built when it is first asked for."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look


def made_page(key: str, link: DeskLink, look: Look) -> QWidget:
    """Build one of them."""
    if key == "large":
        from cookstove_gui.gui.frame.large_view import LargeView

        return LargeView(link, look)
    if key == "keys":
        from cookstove_gui.gui.frame.keys_page import KeysPage

        return KeysPage()
    if key == "plan":
        from cookstove_gui.gui.plan.page import PlanPage

        return PlanPage(link, look)
    if key == "my_stove":
        from cookstove_gui.gui.my_stove.page import MyStovePage

        return MyStovePage(link, look)
    from cookstove_gui.gui.logbook.page import LogbookPage

    return LogbookPage(link, look)
