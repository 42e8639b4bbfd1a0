"""What surrounds every page: heading, page buttons, cautions, problem pane, large view."""
