-- What the cook has chosen, and what was learned of each stove: the second can always be computed again from the log.

CREATE TABLE setting (
    key TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
);

CREATE TABLE character (
    stove TEXT NOT NULL PRIMARY KEY REFERENCES stove (name),
    made_by TEXT NOT NULL,  -- version of the code that learned it
    of_sessions TEXT NOT NULL,  -- fingerprint of the sessions it was learned from
    content TEXT NOT NULL  -- JSON
);
