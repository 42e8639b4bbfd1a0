"""What the Cook page asks."""
