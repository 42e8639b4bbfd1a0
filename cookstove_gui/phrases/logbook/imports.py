"""What an import would bring."""

from cookstove_gui.phrases.edge import entries_count, sessions_count


def import_question(problems: int, rows: int, files: int) -> str:
    """What an import would bring, and what is wrong with it."""
    wrong = "One thing is wrong" if problems == 1 else f"{problems} things are wrong"
    if files == 0:
        return f"{wrong}, and there is nothing that could be kept."
    return f"{wrong} or doubtful. {entries_count(rows).capitalize()} in {sessions_count(files)} can be kept."


def import_kept(sessions: int, rows: int, stoves: tuple[str, ...], in_use: str) -> str:
    """What was kept; where it is of other stoves, that the stove in use is the same as before."""
    kept = f"Kept: {sessions_count(sessions)} with {entries_count(rows)}."
    others = [name for name in stoves if name != in_use]
    if not others:
        return kept
    return f"{kept} {' and '.join(others)} can be chosen on the page My stove; {in_use} stays in use."


def sheet_makes(rows: int, sessions: int, stove: str) -> str:
    """What a table becomes by the meanings chosen."""
    if rows == 0:
        return "This makes nothing yet: say what at least one column means."
    return f"This makes {entries_count(rows)} in {sessions_count(sessions)} of {stove}."
