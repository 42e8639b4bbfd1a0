"""What the page Plan asks, worked out without a screen."""
