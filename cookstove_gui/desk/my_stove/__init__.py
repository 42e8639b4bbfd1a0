"""What the page My stove asks and keeps."""
