-- What is folded from the journal, to find things fast. Nothing here is a record: the file may be thrown away, and is built anew.

-- Where to go on from: what the bench knew just before its last batch began, and before the one before that.
CREATE TABLE checkpoint (
  age      INTEGER PRIMARY KEY CHECK (age IN (0, 1)),
  entry    INTEGER NOT NULL,
  hash     TEXT NOT NULL,
  knowing  TEXT NOT NULL
) STRICT;

CREATE TABLE batch (
  first      INTEGER PRIMARY KEY,
  last       INTEGER NOT NULL,
  code       TEXT NOT NULL,
  recipe     TEXT NOT NULL,
  person     TEXT NOT NULL,
  started    TEXT NOT NULL,
  ended      TEXT NOT NULL,
  ending     TEXT NOT NULL,
  vessels    INTEGER NOT NULL,
  filled     INTEGER NOT NULL,
  deviations INTEGER NOT NULL
) STRICT;
CREATE INDEX batch_code ON batch (code);

-- Corrections and notes written after the next batch had begun.
CREATE TABLE later (
  entry INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL
) STRICT;
CREATE INDEX later_batch ON later (batch);

-- Which lot went into which batch; an empty lot is an unknown one.
CREATE TABLE lot_use (
  lot      TEXT NOT NULL,
  material TEXT NOT NULL,
  batch    INTEGER NOT NULL,
  amount   INTEGER NOT NULL,
  vessels  TEXT NOT NULL,
  PRIMARY KEY (lot, material, batch)
) STRICT, WITHOUT ROWID;
CREATE INDEX lot_use_batch ON lot_use (batch);

-- When each scale was tried with a known mass; what it showed is read from the journal.
CREATE TABLE scale_check (
  entry INTEGER PRIMARY KEY,
  scale TEXT NOT NULL
) STRICT;
CREATE INDEX scale_check_scale ON scale_check (scale, entry);

CREATE TABLE lot_received (
  entry    INTEGER PRIMARY KEY,
  wall     TEXT NOT NULL,
  lot      TEXT NOT NULL,
  material TEXT NOT NULL,
  amount   INTEGER NOT NULL,
  note     TEXT NOT NULL,
  person   TEXT NOT NULL
) STRICT;
CREATE INDEX lot_received_lot ON lot_received (lot, material);
