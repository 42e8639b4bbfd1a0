"""The headless commands: answers on standard output, complaints on standard error, never a traceback, never Qt.

Exit code 0: done; 2: the input is wrong, with one clear line on standard error. Where only some rows or some logs are
wrong, the rest is answered all the same and the code is 2.
"""

import sys
from collections.abc import Sequence

from cookstove_gui.commands.parsing import Request, parsed
from cookstove_gui.errors import Problem

DONE = 0
WRONG_INPUT = 2


def run(arguments: Sequence[str]) -> int:
    """Run one command, such as `["outlook", "bread.csv", "--json"]`; returns the exit code."""
    try:
        request = parsed(arguments)
        if request is None:
            return DONE
        _use_own_tables()
        return _answer(request)
    except Problem as problem:
        _complain(problem.sentence)
        return WRONG_INPUT


def _use_own_tables() -> None:
    """The tasks, foods and words that the cook added or changed; what cannot be used is said, and nothing else."""
    from cookstove_gui.logbook.logbook import default_path
    from cookstove_gui.resource_files import has_own_tables, use_own_tables

    use_own_tables(default_path().parent)
    if not has_own_tables():
        return
    from cookstove_gui.cooking.own import own_sentences

    for sentence in own_sentences():
        _complain(sentence)


def _answer(request: Request) -> int:
    if request.command == "report":
        from cookstove_gui.commands.report import report

        return report(request, _complain)
    if request.command == "table":
        from cookstove_gui.commands.table import table

        return table(request, _complain)
    if request.command == "plan":
        from cookstove_gui.commands.plan import plan_lines

        lines, whole = plan_lines(request, _complain)
        _print(lines)
        return DONE if whole else WRONG_INPUT
    if request.command == "track-record":
        from cookstove_gui.commands.track_record import record_lines

        lines, whole = record_lines(request, _complain)
        _print(lines)
        return DONE if whole else WRONG_INPUT
    return _answer_each(request)


def _answer_each(request: Request) -> int:
    from cookstove_gui.commands.lines import lines_of
    from cookstove_gui.commands.question import Asker

    asker = Asker(request, _complain)
    code = DONE
    for log in request.logs:
        try:
            asked = asker.ask(log)
            _print(lines_of(request, asked))
        except Problem as problem:
            _complain(problem.sentence)
            code = WRONG_INPUT
        else:
            code = code if asked.is_whole else WRONG_INPUT
    return code


def _print(lines: Sequence[str]) -> None:
    for line in lines:
        print(line)


def _complain(sentence: str) -> None:
    print(" ".join(sentence.split()), file=sys.stderr)
