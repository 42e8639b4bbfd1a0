-- A checksum for every row, kept by the store itself; the program gives it the function row_checksum (CRC-32).

ALTER TABLE stove ADD COLUMN checksum INTEGER;
ALTER TABLE session ADD COLUMN checksum INTEGER;
ALTER TABLE entry ADD COLUMN checksum INTEGER;
ALTER TABLE setting ADD COLUMN checksum INTEGER;
ALTER TABLE character ADD COLUMN checksum INTEGER;
ALTER TABLE thermometer_check ADD COLUMN checksum INTEGER;
ALTER TABLE weather ADD COLUMN checksum INTEGER;

-- Everything in an entry stays as it was written; only its checksum is put beside it.
DROP TRIGGER entry_is_never_changed;

CREATE TRIGGER entry_is_never_changed
BEFORE UPDATE OF session, number, at, offset_minutes, kind, spot, value, unit, note ON entry
BEGIN
    SELECT RAISE(ABORT, 'entries are append-only');
END;

UPDATE stove SET checksum = row_checksum(name, description);
UPDATE session SET checksum = row_checksum(number, stove, title);
UPDATE entry SET checksum = row_checksum(session, number, at, offset_minutes, kind, spot, value, unit, note);
UPDATE setting SET checksum = row_checksum(key, value);
UPDATE character SET checksum = row_checksum(stove, made_by, of_sessions, content);
UPDATE thermometer_check SET checksum = row_checksum(number, day, instrument, point, shown, pressure, takes_back);
UPDATE weather SET checksum = row_checksum(number, at, offset_minutes, kind, value);

CREATE TRIGGER stove_is_summed AFTER INSERT ON stove
BEGIN
    UPDATE stove SET checksum = row_checksum(NEW.name, NEW.description)
    WHERE name = NEW.name;
END;

CREATE TRIGGER stove_is_summed_again AFTER UPDATE OF name, description ON stove
BEGIN
    UPDATE stove SET checksum = row_checksum(NEW.name, NEW.description)
    WHERE name = NEW.name;
END;

CREATE TRIGGER session_is_summed AFTER INSERT ON session
BEGIN
    UPDATE session SET checksum = row_checksum(NEW.number, NEW.stove, NEW.title)
    WHERE number = NEW.number;
END;

CREATE TRIGGER session_is_summed_again AFTER UPDATE OF number, stove, title ON session
BEGIN
    UPDATE session SET checksum = row_checksum(NEW.number, NEW.stove, NEW.title)
    WHERE number = NEW.number;
END;

CREATE TRIGGER entry_is_summed AFTER INSERT ON entry
BEGIN
    UPDATE entry SET checksum = row_checksum(
        NEW.session, NEW.number, NEW.at, NEW.offset_minutes, NEW.kind, NEW.spot, NEW.value, NEW.unit,
        NEW.note
    )
    WHERE session = NEW.session AND number = NEW.number;
END;

CREATE TRIGGER setting_is_summed AFTER INSERT ON setting
BEGIN
    UPDATE setting SET checksum = row_checksum(NEW.key, NEW.value)
    WHERE key = NEW.key;
END;

CREATE TRIGGER setting_is_summed_again AFTER UPDATE OF key, value ON setting
BEGIN
    UPDATE setting SET checksum = row_checksum(NEW.key, NEW.value)
    WHERE key = NEW.key;
END;

CREATE TRIGGER character_is_summed AFTER INSERT ON character
BEGIN
    UPDATE character SET checksum = row_checksum(NEW.stove, NEW.made_by, NEW.of_sessions, NEW.content)
    WHERE stove = NEW.stove;
END;

CREATE TRIGGER character_is_summed_again AFTER UPDATE OF stove, made_by, of_sessions, content ON character
BEGIN
    UPDATE character SET checksum = row_checksum(NEW.stove, NEW.made_by, NEW.of_sessions, NEW.content)
    WHERE stove = NEW.stove;
END;

CREATE TRIGGER thermometer_check_is_summed AFTER INSERT ON thermometer_check
BEGIN
    UPDATE thermometer_check SET checksum = row_checksum(
        NEW.number, NEW.day, NEW.instrument, NEW.point, NEW.shown, NEW.pressure, NEW.takes_back
    )
    WHERE stove = NEW.stove AND number = NEW.number;
END;

CREATE TRIGGER weather_is_summed AFTER INSERT ON weather
BEGIN
    UPDATE weather SET checksum = row_checksum(NEW.number, NEW.at, NEW.offset_minutes, NEW.kind, NEW.value)
    WHERE stove = NEW.stove AND number = NEW.number;
END;
