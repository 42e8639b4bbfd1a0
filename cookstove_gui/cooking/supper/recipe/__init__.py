"""What a recipe says of heats, minutes, vessels and steps, found in its text to be confirmed by the cook."""
