"""What the page Logbook asks: the list of sessions, one of them opened, the record, the seasons."""
