-- A session ends with the latest thing done or read. A row taken back or let stand years later does not make it longer.

UPDATE session SET
    last_at = coalesce(
        (SELECT max(at) FROM entry WHERE session = session.number AND kind NOT IN ('void', 'kept')), last_at
    );

DROP TRIGGER entry_is_counted;

CREATE TRIGGER entry_is_counted AFTER INSERT ON entry
BEGIN
    UPDATE session SET
        first_at = min(coalesce(first_at, NEW.at), NEW.at),
        last_at = iif(
            NEW.kind IN ('void', 'kept') AND last_at IS NOT NULL, last_at, max(coalesce(last_at, NEW.at), NEW.at)
        ),
        offset_minutes = NEW.offset_minutes,
        entry_count = entry_count + 1
    WHERE number = NEW.session;
END;
