"""What a whole logbook would bring, and what was kept of it."""

from cookstove_gui.phrases.logbook.imports import import_kept, package_question


def test_own_tables_are_named_only_where_some_come() -> None:
    assert package_question("all.zip", 2, 1, 0, 0) == "all.zip brings 2 sessions of 1 stove."
    told = package_question("all.zip", 0, 0, 0, 3, 1)
    assert told == (
        "all.zip brings no session that is new. 3 sessions are in this logbook already. "
        "It also brings 1 row of own tasks, bakes, foods and words."
    )


def test_what_was_kept() -> None:
    assert import_kept(1, 12, ("Mine",), "Mine") == "Kept: 1 session with 12 entries."
    assert import_kept(0, 0, (), "Mine", 3) == "Kept: 3 rows of own tasks, bakes, foods and words."
    assert import_kept(1, 12, ("Mine",), "Mine", 3).startswith("Kept: 1 session with 12 entries and 3 rows of own")
