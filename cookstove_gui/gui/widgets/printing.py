"""A page that is made as PDF, on the printer that the cook chooses. Printing is dear to load: only when asked for."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF, QSizeF
from PySide6.QtGui import QPageLayout, QPainter
from PySide6.QtWidgets import QDialog, QWidget

from cookstove_gui.errors import SurroundingsProblem

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

_DOTS = 300  # an inch; a page is drawn no finer, so that it does not fill the memory
_POINTS = 72.0  # an inch


def ask_and_print(pdf: bytes, title: str, parent: QWidget) -> bool:
    """Ask for a printer and print; whether it was done. Raises SurroundingsProblem where the printer does not start."""
    from PySide6.QtPrintSupport import QPrintDialog, QPrinter

    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(title)
    dialog = QPrintDialog(printer, parent)
    dialog.setWindowTitle(f"Print: {title}")
    if dialog.exec() != QDialog.DialogCode.Accepted:
        return False
    print_pages(pdf, printer)
    return True


def print_pages(pdf: bytes, printer: "QPrinter") -> None:
    """Every page of a PDF on a printer, each as large as the paper allows, upright or across as it is made."""
    from PySide6.QtPdf import QPdfDocument

    kept, buffer = QByteArray(pdf), QBuffer()
    buffer.setData(kept)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    document = QPdfDocument()
    document.load(buffer)
    painter = QPainter()
    for page in range(document.pageCount()):
        size = document.pagePointSize(page)
        ways = QPageLayout.Orientation
        printer.setPageOrientation(ways.Landscape if size.width() > size.height() else ways.Portrait)
        if page:
            printer.newPage()
        elif not painter.begin(printer):
            raise SurroundingsProblem("The printer did not start; check that it is on, or save the page instead.")
        dots = QSizeF(size.width(), size.height()) * (min(printer.resolution(), _DOTS) / _POINTS)
        image = document.render(page, dots.toSize())
        sheet = QRectF(printer.pageLayout().paintRectPixels(printer.resolution()))
        scale = min(sheet.width() / image.width(), sheet.height() / image.height())
        shown = QSizeF(image.width() * scale, image.height() * scale)
        at = QPointF((sheet.width() - shown.width()) / 2, (sheet.height() - shown.height()) / 2)
        painter.drawImage(QRectF(at, shown), image)
    if painter.isActive():
        painter.end()
    document.close()
