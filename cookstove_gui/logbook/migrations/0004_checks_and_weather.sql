-- Thermometer checks and weather readings become rows of their own, append-only; chimney and sides join the stove's
-- description. All of them were settings that held JSON by the stove's name.

CREATE TABLE thermometer_check (
    stove TEXT NOT NULL REFERENCES stove (name),
    number INTEGER NOT NULL CHECK (number >= 1),
    day TEXT NOT NULL,  -- ISO date on the cook's calendar
    instrument TEXT,
    point TEXT,  -- ice, boil
    shown REAL,  -- K
    pressure REAL,  -- Pa
    takes_back INTEGER CHECK (takes_back < number),  -- number of the check that this row takes back, if it does
    PRIMARY KEY (stove, number),
    CHECK (
        takes_back IS NOT NULL
        OR instrument IS NOT NULL AND point IS NOT NULL AND shown IS NOT NULL AND pressure IS NOT NULL
    )
) WITHOUT ROWID;

CREATE TABLE weather (
    stove TEXT NOT NULL REFERENCES stove (name),
    number INTEGER NOT NULL CHECK (number >= 1),
    at INTEGER NOT NULL,  -- microseconds since 1970 UTC
    offset_minutes INTEGER NOT NULL,
    kind TEXT NOT NULL,  -- pressure, sea pressure, outdoors
    value REAL,  -- Pa, Pa, K; none where the reading before no longer holds
    PRIMARY KEY (stove, number)
) WITHOUT ROWID;

INSERT INTO thermometer_check (stove, number, day, instrument, point, shown, pressure)
SELECT
    stove.name,
    one.key + 1,
    json_extract(one.value, '$.on'),
    json_extract(one.value, '$.instrument'),
    json_extract(one.value, '$.point'),
    json_extract(one.value, '$.shown'),
    json_extract(one.value, '$.pressure')
FROM setting, json_each(setting.value) AS of_stove, json_each(of_stove.value) AS one
JOIN stove ON stove.name = of_stove.key
WHERE setting.key = 'thermometer checks';

INSERT INTO weather (stove, number, at, offset_minutes, kind, value)
SELECT
    stove,
    row_number() OVER (PARTITION BY stove),
    strftime('%s', clock) * 1000000,
    (strftime('%s', clock, 'localtime') - strftime('%s', clock)) / 60,
    kind,
    value
FROM (
    SELECT
        of_stove.key AS stove,
        json_extract(of_stove.value, '$.at') AS clock,
        CASE WHEN json_extract(of_stove.value, '$.as_at_sea') THEN 'sea pressure' ELSE 'pressure' END AS kind,
        json_extract(of_stove.value, '$.pressure') AS value
    FROM setting, json_each(setting.value) AS of_stove
    WHERE setting.key = 'barometer'
    UNION ALL
    SELECT
        of_stove.key,
        json_extract(of_stove.value, '$.outdoors_at'),
        'outdoors',
        json_extract(of_stove.value, '$.outdoors')
    FROM setting, json_each(setting.value) AS of_stove
    WHERE setting.key = 'chimney'
)
WHERE stove IN (SELECT name FROM stove) AND strftime('%s', clock) IS NOT NULL;

-- A table may stand at the end of a TOML text, a plain key only before its tables.

UPDATE stove SET description = description || printf(
    '%c[chimney]%cheight_m = %!.15f%cinside_width_m = %!.15f%cwall_loss_w_m2_k = %.1f%c',
    char(10), char(10), kept.height, char(10), kept.diameter, char(10), kept.loss, char(10)
)
FROM (
    SELECT
        of_stove.key AS stove,
        json_extract(of_stove.value, '$.height') AS height,
        json_extract(of_stove.value, '$.diameter') AS diameter,
        CASE json_extract(of_stove.value, '$.wall') WHEN 'lined' THEN 2.0 WHEN 'pipe' THEN 8.0 ELSE 4.0 END AS loss
    FROM setting, json_each(setting.value) AS of_stove
    WHERE setting.key = 'chimney'
) AS kept
WHERE stove.name = kept.stove;

UPDATE stove SET description = printf('sides = "%s"%c', kept.material, char(10)) || description
FROM (
    SELECT of_stove.key AS stove, json_extract(of_stove.value, '$.material') AS material
    FROM setting, json_each(setting.value) AS of_stove
    WHERE setting.key = 'sides'
) AS kept
WHERE stove.name = kept.stove;

DELETE FROM setting WHERE key IN ('thermometer checks', 'barometer', 'chimney', 'sides');

-- Only the name of the stove may change in these rows, when the stove is renamed.

CREATE TRIGGER check_is_never_changed
BEFORE UPDATE OF number, day, instrument, point, shown, pressure, takes_back ON thermometer_check
BEGIN
    SELECT RAISE(ABORT, 'checks are append-only');
END;

CREATE TRIGGER check_is_never_deleted BEFORE DELETE ON thermometer_check
BEGIN
    SELECT RAISE(ABORT, 'checks are append-only');
END;

CREATE TRIGGER check_is_never_replaced BEFORE INSERT ON thermometer_check
WHEN EXISTS (SELECT 1 FROM thermometer_check WHERE stove = NEW.stove AND number = NEW.number)
BEGIN
    SELECT RAISE(ABORT, 'checks are append-only');
END;

CREATE TRIGGER weather_is_never_changed
BEFORE UPDATE OF number, at, offset_minutes, kind, value ON weather
BEGIN
    SELECT RAISE(ABORT, 'weather readings are append-only');
END;

CREATE TRIGGER weather_is_never_deleted BEFORE DELETE ON weather
BEGIN
    SELECT RAISE(ABORT, 'weather readings are append-only');
END;

CREATE TRIGGER weather_is_never_replaced BEFORE INSERT ON weather
WHEN EXISTS (SELECT 1 FROM weather WHERE stove = NEW.stove AND number = NEW.number)
BEGIN
    SELECT RAISE(ABORT, 'weather readings are append-only');
END;
