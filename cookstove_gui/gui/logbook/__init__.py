"""The Logbook page and its parts."""
