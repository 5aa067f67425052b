-- A step that fails half way.
CREATE TABLE shelf (name TEXT PRIMARY KEY) STRICT;
INSERT INTO shelf VALUES ('left'), ('left');
