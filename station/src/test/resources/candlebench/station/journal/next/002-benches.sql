-- A step such as a later program may take: one more table, and one more column of the entries.
CREATE TABLE bench (name TEXT PRIMARY KEY) STRICT;
INSERT INTO bench VALUES ('the only one');
ALTER TABLE entry ADD COLUMN bench TEXT NOT NULL DEFAULT 'the only one' REFERENCES bench (name);
