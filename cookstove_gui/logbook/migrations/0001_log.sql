-- Stoves, sessions and the append-only log itself.

CREATE TABLE stove (
    name TEXT NOT NULL PRIMARY KEY,
    description TEXT NOT NULL  -- as a stove.toml
);

CREATE TABLE session (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    stove TEXT NOT NULL REFERENCES stove (name),
    title TEXT NOT NULL
);

CREATE INDEX session_of_stove ON session (stove);

CREATE TABLE entry (
    session INTEGER NOT NULL REFERENCES session (number),
    number INTEGER NOT NULL CHECK (number >= 1),
    at INTEGER NOT NULL,  -- microseconds since 1970 UTC
    offset_minutes INTEGER NOT NULL,
    kind TEXT NOT NULL,
    spot TEXT NOT NULL,
    value TEXT NOT NULL,
    unit TEXT NOT NULL,
    note TEXT NOT NULL,
    PRIMARY KEY (session, number)
) WITHOUT ROWID;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;

CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;

-- Without this an INSERT OR REPLACE would go round the two triggers above.
CREATE TRIGGER entry_is_never_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE session = NEW.session AND number = NEW.number)
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;
