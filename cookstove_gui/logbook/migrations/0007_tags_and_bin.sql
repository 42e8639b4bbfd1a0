-- Tags of sessions, and the bin: a session in it is out of sight, and its rows are the only ones that may be deleted.

CREATE TABLE tag (
    session INTEGER NOT NULL REFERENCES session (number),
    name TEXT NOT NULL,
    checksum INTEGER,
    PRIMARY KEY (session, name)
) WITHOUT ROWID;

CREATE TABLE bin (
    session INTEGER NOT NULL PRIMARY KEY REFERENCES session (number),
    at INTEGER NOT NULL,  -- microseconds since 1970 UTC, when it was put there
    checksum INTEGER
);

CREATE INDEX tag_without_checksum ON tag (session, name) WHERE checksum IS NULL;
CREATE INDEX bin_without_checksum ON bin (session) WHERE checksum IS NULL;

DROP TRIGGER entry_is_never_deleted;

CREATE TRIGGER entry_is_deleted_only_in_the_bin BEFORE DELETE ON entry
WHEN NOT EXISTS (SELECT 1 FROM bin WHERE session = OLD.session)
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;
