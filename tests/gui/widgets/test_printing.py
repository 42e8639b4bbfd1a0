"""A PDF goes to the printer page for page, as large as the paper allows."""

from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QPageLayout, QPageSize
from PySide6.QtPdf import QPdfDocument
from PySide6.QtPrintSupport import QPrinter

from cookstove_gui.gui.widgets.printing import print_pages
from cookstove_gui.phrases.my_stove.first_fires import Certificate, CertificateLine
from cookstove_gui.reports.writing import pdf_bytes

pytestmark = pytest.mark.gui
LINE = CertificateLine(stage="Kindling fire", day="5 January 2026", hottest="352 °F", took="38 min")


def sheet() -> bytes:
    """A certificate, across on small paper."""
    decides = "The manual decides."
    record = Certificate(title="First fires", lines=(LINE,) * 3, is_full=True, foot="", decides=decides)
    return pdf_bytes("certificate", record)


def printed(pdf: bytes, path: Path) -> PdfReader:
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    printer.setPageLayout(
        QPageLayout(QPageSize(QPageSize.PageSizeId.A4), QPageLayout.Orientation.Portrait, QMarginsF())
    )
    print_pages(pdf, printer)
    return PdfReader(path)


def test_every_page_is_printed_the_way_it_is_made(qapp: object, tmp_path: Path) -> None:
    pdf = sheet()
    made, found = PdfReader(_kept(pdf, tmp_path)), printed(pdf, tmp_path / "printed.pdf")
    assert len(found.pages) == len(made.pages)
    across = [page.mediabox.width > page.mediabox.height for page in found.pages]
    assert across == [page.mediabox.width > page.mediabox.height for page in made.pages] == [True]


def test_what_is_printed_looks_like_the_page(qapp: object, tmp_path: Path) -> None:
    pdf = sheet()
    printed(pdf, tmp_path / "printed.pdf")
    shares = []
    for path in (_kept(pdf, tmp_path), tmp_path / "printed.pdf"):
        document = QPdfDocument()
        document.load(str(path))
        image = document.render(0, (document.pagePointSize(0) * 0.5).toSize())
        points = [(x, y) for x in range(image.width()) for y in range(image.height())]
        shares.append(sum(image.pixelColor(x, y).lightness() < 160 for x, y in points) / len(points))
        document.close()
    assert shares[0] > 0.005
    assert shares[1] == pytest.approx(shares[0], rel=0.5)


def _kept(pdf: bytes, folder: Path) -> Path:
    path = folder / "made.pdf"
    path.write_bytes(pdf)
    return path
