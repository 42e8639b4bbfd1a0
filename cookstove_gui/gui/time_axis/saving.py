"""A picture of the time axis as a file."""

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget


def save_picture(widget: QWidget) -> None:
    """Ask where, and save what the widget shows."""
    path, _ = QFileDialog.getSaveFileName(widget, "Save a picture", "oven.png", "Picture (*.png)")
    if not path:
        return
    name = path if path.lower().endswith(".png") else f"{path}.png"
    if not widget.grab().save(name):
        QMessageBox.warning(widget, "Not saved", f"The picture could not be written to {name}; choose another folder.")
