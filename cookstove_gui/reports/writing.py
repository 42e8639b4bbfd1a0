"""A report laid out and written: HTML through jinja2, PDF through typst; no network anywhere."""

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.reports.session_report import SessionReport
from cookstove_gui.resource_files import resource

if TYPE_CHECKING:
    from _typeshed import DataclassInstance


def html_text(name: str, record: object) -> str:
    """A record laid out by the template of that name, as one HTML page that needs nothing beside it."""
    import jinja2

    environment = jinja2.Environment(
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
        keep_trailing_newline=True,
    )
    template = environment.from_string(resource("reports", f"{name}.html.jinja").read_text("utf-8"))
    return template.render(report=record)


def pdf_bytes(name: str, record: "DataclassInstance") -> bytes:
    """The same as a tagged PDF."""
    import typst

    made = typst.compile(
        resource("reports", f"{name}.typ").read_bytes(),
        format="pdf",
        sys_inputs={"report": json.dumps(_printable(asdict(record)))},
    )
    return bytes(made)


def write_report(path: Path, report: SessionReport) -> None:
    """Write a session's report."""
    write_page(path, "session", report)


def write_page(path: Path, name: str, record: "DataclassInstance") -> None:
    """Write a record as .html or .pdf, told by the ending, whole or not at all."""
    match path.suffix.lower():
        case ".html":
            content = html_text(name, record).encode("utf-8")
        case ".pdf":
            content = pdf_bytes(name, record)
        case _:
            raise InputProblem(f"{path} must end in .html or .pdf; give the report one of these endings.")
    write_whole(path, content)


def _printable(value: object) -> object:
    """The same with control letters as spaces, which no typesetter can set."""
    if isinstance(value, str):
        return "".join(letter if letter == "\n" or ord(letter) >= 32 else " " for letter in value)
    if isinstance(value, list | tuple):
        return [_printable(part) for part in value]
    if isinstance(value, dict):
        return {key: _printable(part) for key, part in value.items()}
    return value
