-- What the file is for; one row, written once.
CREATE TABLE purpose (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  word     TEXT NOT NULL CHECK (word IN ('record', 'practice'))
) STRICT;

-- The entries, in the order in which they were written. A correction is another entry.
CREATE TABLE entry (
  sequence INTEGER PRIMARY KEY CHECK (sequence > 0),
  wall     TEXT NOT NULL,
  kind     TEXT NOT NULL,
  body     TEXT NOT NULL CHECK (json_valid(body)),
  previous TEXT NOT NULL CHECK (length(previous) = 64),
  hash     TEXT NOT NULL CHECK (length(hash) = 64)
) STRICT;

CREATE TRIGGER entry_follows_the_last BEFORE INSERT ON entry
WHEN NEW.sequence <> 1 + ifnull((SELECT max(sequence) FROM entry), 0)
  OR NEW.previous <> ifnull((SELECT hash FROM entry ORDER BY sequence DESC LIMIT 1),
     '0000000000000000000000000000000000000000000000000000000000000000')
BEGIN
  SELECT RAISE(ABORT, 'an entry is written after the last one only');
END;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN
  SELECT RAISE(ABORT, 'entries are never changed: write a correction');
END;

CREATE TRIGGER entry_is_never_erased BEFORE DELETE ON entry
BEGIN
  SELECT RAISE(ABORT, 'entries are never erased: write a correction');
END;

CREATE TRIGGER purpose_is_never_changed BEFORE UPDATE ON purpose
BEGIN
  SELECT RAISE(ABORT, 'a journal keeps its purpose');
END;

CREATE TRIGGER purpose_is_never_erased BEFORE DELETE ON purpose
BEGIN
  SELECT RAISE(ABORT, 'a journal keeps its purpose');
END;
