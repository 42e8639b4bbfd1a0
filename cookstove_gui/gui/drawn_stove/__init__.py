"""The stove as the cook sees it, drawn: its geometry, its iron and heats, and its spots as buttons."""
