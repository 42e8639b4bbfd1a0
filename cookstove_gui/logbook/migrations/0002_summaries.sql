-- First and last clock and the count of each session, kept by the store itself, so that a lifetime of sessions lists at once.

ALTER TABLE session ADD COLUMN first_at INTEGER;
ALTER TABLE session ADD COLUMN last_at INTEGER;
ALTER TABLE session ADD COLUMN offset_minutes INTEGER NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN entry_count INTEGER NOT NULL DEFAULT 0;

UPDATE session SET
    first_at = (SELECT min(at) FROM entry WHERE session = session.number),
    last_at = (SELECT max(at) FROM entry WHERE session = session.number),
    entry_count = (SELECT count(*) FROM entry WHERE session = session.number),
    offset_minutes = coalesce(
        (SELECT offset_minutes FROM entry WHERE session = session.number ORDER BY number DESC LIMIT 1), 0
    );

CREATE TRIGGER entry_is_counted AFTER INSERT ON entry
BEGIN
    UPDATE session SET
        first_at = min(coalesce(first_at, NEW.at), NEW.at),
        last_at = max(coalesce(last_at, NEW.at), NEW.at),
        offset_minutes = NEW.offset_minutes,
        entry_count = entry_count + 1
    WHERE number = NEW.session;
END;
