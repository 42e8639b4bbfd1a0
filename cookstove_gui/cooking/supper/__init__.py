"""A meal planned back from the table: dishes, the solved plan, and what becomes of it as the fire goes on."""
