-- A cook's own dishes, and the suppers that were planned: what was wanted, what was done of it, and the plan.

CREATE TABLE dish (
    key TEXT NOT NULL PRIMARY KEY,
    content TEXT NOT NULL,  -- as in a file of dishes
    checksum INTEGER
);

CREATE TABLE supper (
    number INTEGER NOT NULL PRIMARY KEY,
    stove TEXT NOT NULL,
    table_at INTEGER NOT NULL,  -- microseconds since 1970 UTC
    content TEXT NOT NULL,  -- JSON
    checksum INTEGER
);

CREATE INDEX supper_by_stove ON supper (stove, table_at);
CREATE INDEX dish_without_checksum ON dish (key) WHERE checksum IS NULL;
CREATE INDEX supper_without_checksum ON supper (number) WHERE checksum IS NULL;

CREATE TRIGGER dish_needs_a_checksum AFTER UPDATE OF key, content ON dish
BEGIN
    UPDATE dish SET checksum = NULL WHERE key = NEW.key;
END;

CREATE TRIGGER supper_needs_a_checksum AFTER UPDATE OF number, table_at, content ON supper
BEGIN
    UPDATE supper SET checksum = NULL WHERE number = NEW.number;
END;
