"""When a bake is done, when it is turned, and when it goes in for the table."""
