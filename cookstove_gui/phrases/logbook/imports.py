"""What an import would bring."""

from cookstove_gui.phrases.edge import entries_count, sessions_count


def import_question(problems: int, rows: int, files: int) -> str:
    """What an import would bring, and what is wrong with it."""
    wrong = "One thing is wrong" if problems == 1 else f"{problems} things are wrong"
    if files == 0:
        return f"{wrong}, and there is nothing that could be kept."
    return f"{wrong} or doubtful. {entries_count(rows).capitalize()} in {sessions_count(files)} can be kept."


def own_count(own: int) -> str:
    """So many of what a cook added or changed."""
    return f"{own} {'row' if own == 1 else 'rows'} of own tasks, bakes, foods and words"


def package_question(name: str, sessions: int, stoves: int, photos: int, known: int, own: int = 0) -> str:
    """What a whole logbook in one file would bring, and what of it is here already."""
    asked = _sessions_question(name, sessions, stoves, photos, known)
    return f"{asked} It also brings {own_count(own)}." if own else asked


def _sessions_question(name: str, sessions: int, stoves: int, photos: int, known: int) -> str:
    here = f"{sessions_count(known).capitalize()} {'is' if known == 1 else 'are'} in this logbook already."
    if not sessions:
        return f"{name} brings no session that is new. {here}" if known else f"{name} holds no session."
    of = "1 stove" if stoves == 1 else f"{stoves} stoves"
    pictures = "" if not photos else f" and {photos} {'photo' if photos == 1 else 'photos'}"
    told = f"{name} brings {sessions_count(sessions)} of {of}{pictures}."
    return f"{told} {here}" if known else told


def import_kept(sessions: int, rows: int, stoves: tuple[str, ...], in_use: str, own: int = 0) -> str:
    """What was kept; where it is of other stoves, that the stove in use is the same as before."""
    parts = [f"{sessions_count(sessions)} with {entries_count(rows)}"] if sessions or not own else []
    kept = f"Kept: {' and '.join([*parts, *([own_count(own)] if own else [])])}."
    others = [name for name in stoves if name != in_use]
    if not others:
        return kept
    return f"{kept} {' and '.join(others)} can be chosen on the page My stove; {in_use} stays in use."


def sheet_makes(rows: int, sessions: int, stove: str) -> str:
    """What a table becomes by the meanings chosen."""
    if rows == 0:
        return "This makes nothing yet: say what at least one column means."
    return f"This makes {entries_count(rows)} in {sessions_count(sessions)} of {stove}."
