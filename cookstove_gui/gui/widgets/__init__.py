"""Parts shared by all pages: colours, forms, fields, the geometry of a drawn stove."""
