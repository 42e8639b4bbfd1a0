"""What an import would bring."""

from cookstove_gui.phrases.edge import entries_count, sessions_count


def import_question(problems: int, rows: int, files: int) -> str:
    """What an import would bring, and what is wrong with it."""
    wrong = "One thing is wrong" if problems == 1 else f"{problems} things are wrong"
    if files == 0:
        return f"{wrong}, and there is nothing that could be kept."
    return f"{wrong} or doubtful. {entries_count(rows).capitalize()} in {sessions_count(files)} can be kept."
