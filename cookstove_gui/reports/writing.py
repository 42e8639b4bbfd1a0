"""A report laid out and written: HTML through jinja2, PDF through typst; no network anywhere."""

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.reports.season_report import SeasonReport
from cookstove_gui.reports.session_report import SessionReport
from cookstove_gui.reports.stove_report import StoveReport
from cookstove_gui.resource_files import resource

Report = SessionReport | SeasonReport | StoveReport
_TEMPLATES: dict[type, str] = {SessionReport: "session", SeasonReport: "season", StoveReport: "stove"}
_IMPORT = '#import "page.typ": *\n'  # the typesetter is handed one text
# In a drawing the typesetter (0.15) takes weight 400 of a face with a weight axis for its lightest; 300 is set as 400.
_WEIGHT = (r"font-weight=\"400\"", r"font-weight=\"300\"")

if TYPE_CHECKING:
    from _typeshed import DataclassInstance


def html_text(name: str, record: object) -> str:
    """A record laid out by the template of that name, as one HTML page that needs nothing beside it."""
    import jinja2

    environment = jinja2.Environment(
        loader=jinja2.FunctionLoader(lambda name: resource("reports", f"{name}.html.jinja").read_text("utf-8")),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
        keep_trailing_newline=True,
    )
    return environment.get_template(name).render(report=record)


def pdf_bytes(name: str, record: "DataclassInstance") -> bytes:
    """The same as a tagged PDF."""
    import fontpkg_source_sans_3 as face
    import typst

    shared = resource("reports", "page.typ").read_text("utf-8")
    source = resource("reports", f"{name}.typ").read_text("utf-8").replace(_IMPORT, shared)
    made = typst.compile(
        source.encode("utf-8"),
        format="pdf",
        font_paths=typst.Fonts(font_paths=[face.ROOT / "files"]),
        sys_inputs={"report": json.dumps(_printable(asdict(record))).replace(*_WEIGHT)},
    )
    return bytes(made)


def write_report(path: Path, report: Report) -> None:
    """Write a report by its own template."""
    write_page(path, _TEMPLATES[type(report)], report)


def report_pdf(report: Report) -> bytes:
    """The same as a PDF, to be printed."""
    return pdf_bytes(_TEMPLATES[type(report)], report)


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
