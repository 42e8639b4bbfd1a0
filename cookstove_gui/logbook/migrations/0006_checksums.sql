-- A checksum for every row. The program fills in those that are missing at the end of each transaction.

ALTER TABLE stove ADD COLUMN checksum INTEGER;
ALTER TABLE session ADD COLUMN checksum INTEGER;
ALTER TABLE entry ADD COLUMN checksum INTEGER;
ALTER TABLE setting ADD COLUMN checksum INTEGER;
ALTER TABLE character ADD COLUMN checksum INTEGER;
ALTER TABLE thermometer_check ADD COLUMN checksum INTEGER;
ALTER TABLE weather ADD COLUMN checksum INTEGER;

CREATE INDEX stove_without_checksum ON stove (name) WHERE checksum IS NULL;
CREATE INDEX session_without_checksum ON session (number) WHERE checksum IS NULL;
CREATE INDEX entry_without_checksum ON entry (session, number) WHERE checksum IS NULL;
CREATE INDEX setting_without_checksum ON setting (key) WHERE checksum IS NULL;
CREATE INDEX character_without_checksum ON character (stove) WHERE checksum IS NULL;
CREATE INDEX thermometer_check_without_checksum ON thermometer_check (stove, number) WHERE checksum IS NULL;
CREATE INDEX weather_without_checksum ON weather (stove, number) WHERE checksum IS NULL;

-- Everything in an entry stays as it was written; only its checksum is put beside it.
DROP TRIGGER entry_is_never_changed;

CREATE TRIGGER entry_is_never_changed
BEFORE UPDATE OF session, number, at, offset_minutes, kind, spot, value, unit, note ON entry
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;

CREATE TRIGGER stove_needs_a_checksum AFTER UPDATE OF name, description ON stove
BEGIN
    UPDATE stove SET checksum = NULL WHERE name = NEW.name;
END;

CREATE TRIGGER session_needs_a_checksum AFTER UPDATE OF number, stove, title ON session
BEGIN
    UPDATE session SET checksum = NULL WHERE number = NEW.number;
END;

CREATE TRIGGER setting_needs_a_checksum AFTER UPDATE OF key, value ON setting
BEGIN
    UPDATE setting SET checksum = NULL WHERE key = NEW.key;
END;

CREATE TRIGGER character_needs_a_checksum AFTER UPDATE OF stove, made_by, of_sessions, content ON character
BEGIN
    UPDATE character SET checksum = NULL WHERE stove = NEW.stove;
END;
