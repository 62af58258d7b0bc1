-- A history of version 1, before there were corrections: what the program of that version wrote for an invented stand.
PRAGMA application_id = 1214400561;
PRAGMA user_version = 1;
CREATE TABLE stand (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE) STRICT;
CREATE TABLE entry (id INTEGER PRIMARY KEY, stand INTEGER NOT NULL REFERENCES stand (id), date TEXT NOT NULL, kind TEXT NOT NULL) STRICT;
CREATE TABLE value (entry INTEGER NOT NULL REFERENCES entry (id), key TEXT NOT NULL, number REAL, text TEXT, PRIMARY KEY (entry, key), CHECK ((number IS NULL) <> (text IS NULL))) STRICT, WITHOUT ROWID;
INSERT INTO stand VALUES (1, 'Old slitter'), (2, 'Other stand');
INSERT INTO entry VALUES (1, 1, '2025-01-10', 'pads'), (2, 1, '2025-03-10', 'energy'), (3, 1, '2025-03-10', 'wear'), (4, 2, '2025-03-11', 'note');
INSERT INTO value VALUES (1, 'depth', 0.012, NULL), (2, 'energy', 1.8e11, NULL), (3, 'depth', 0.0101, NULL), (3, 'brake', NULL, 'front'), (4, 'text', NULL, 'painted');
