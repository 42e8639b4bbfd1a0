"""The table of all checks as Markdown, made from the data files so that nobody keeps it by hand."""

from typing import Any

from tests.reference import ROOT, Check, checks, subject

PAGE = ROOT / "resources" / "help" / "checks.md"

_HEAD = """# What the numbers are checked against

This page is made from the data files in `tests/reference/` by `python -m tests.reference`; change those, not this page.

Every row is run as a test. **Verified** rows compare with a published value that was looked up, with a closed form or
with what another library computes. **Guarded** rows hold a number to what we say it is, but rest on memory or common
practice alone: they are no verified standard values.
"""


def markdown() -> str:
    """The whole page."""
    parts = [_HEAD]
    files = list(dict.fromkeys(row.file for row in checks()))
    verified = sum(row.is_verified for row in checks())
    parts.append(f"{len(checks())} rows: {verified} verified, {len(checks()) - verified} guarded.\n")
    for file in files:
        rows = [row for row in checks() if row.file == file]
        parts.append(f"## {subject(file)}\n")
        for title, chosen in (
            ("Verified", [row for row in rows if row.is_verified]),
            ("Guarded, not verified", [row for row in rows if not row.is_verified]),
        ):
            if chosen:
                lines = [
                    f"### {title}\n",
                    "| row | what | expected | within | source | how verified |",
                    "|" + "---|" * 6,
                ]
                parts.append("\n".join(lines + [_line(row) for row in chosen]) + "\n")
    return "\n".join(parts)


def write() -> None:
    """Writes the page anew."""
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(markdown(), encoding="utf-8")


def _line(row: Check) -> str:
    expected = "" if row.value is None else _text(row.value)
    within = _text(row.tolerance) if row.tolerance else ("as said" if row.value is None else "exact")
    cells = (row.id, row.what, expected, within, row.source, row.verified)
    return "| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |"


def _text(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(_text(part) for part in value)
    return f"{value:.10g}" if isinstance(value, float) else str(value)
