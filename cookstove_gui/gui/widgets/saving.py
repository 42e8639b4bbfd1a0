"""What a widget shows, saved as a picture."""

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget


def save_picture(widget: QWidget, name: str) -> None:
    """Ask where, with a name offered, and save what the widget shows."""
    path, _ = QFileDialog.getSaveFileName(widget, "Save a picture", f"{name}.png", "Picture (*.png)")
    if not path:
        return
    name = path if path.lower().endswith(".png") else f"{path}.png"
    if not widget.grab().save(name):
        QMessageBox.warning(widget, "Not saved", f"The picture could not be written to {name}; choose another folder.")
