"""My stove, drawn by its owner: the drawing that is edited, and beside it what is selected."""
