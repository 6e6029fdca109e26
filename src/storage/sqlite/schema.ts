// The tables of version 1. Every row is scoped by its kitchen, in the key. Figures are text: a NUMERIC column would
// turn "12.30" into a float. The log (message, fact) is append-only, the other tables are computed from it.

export const SCHEMA_1 = `
CREATE TABLE kitchen (
  id TEXT NOT NULL PRIMARY KEY,
  settings TEXT NOT NULL,
  created_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE message (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  id TEXT NOT NULL,
  speaker TEXT NOT NULL,
  at TEXT NOT NULL,
  text TEXT NOT NULL,
  outcome TEXT NOT NULL,
  reply TEXT NOT NULL,
  PRIMARY KEY (kitchen, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE fact (
  seq INTEGER PRIMARY KEY,
  kitchen TEXT NOT NULL,
  message TEXT NOT NULL,
  entry TEXT NOT NULL,
  speaker TEXT NOT NULL,
  at TEXT NOT NULL,
  test INTEGER,
  item TEXT,
  type TEXT NOT NULL,
  body TEXT NOT NULL,
  FOREIGN KEY (kitchen, message) REFERENCES message (kitchen, id)
) STRICT;
CREATE INDEX fact_by_test ON fact (kitchen, test, seq);
CREATE INDEX fact_by_speaker ON fact (kitchen, speaker, seq);

CREATE TRIGGER message_is_never_edited BEFORE UPDATE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER message_is_never_deleted BEFORE DELETE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_edited BEFORE UPDATE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_deleted BEFORE DELETE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;

CREATE TABLE test_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  id INTEGER NOT NULL,
  item TEXT NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('open', 'closed', 'dropped')),
  opened_at TEXT NOT NULL,
  closed_at TEXT,
  figures TEXT,
  PRIMARY KEY (kitchen, id)
) STRICT, WITHOUT ROWID;
CREATE INDEX test_row_by_status ON test_row (kitchen, status, item, closed_at, id);

CREATE TABLE memory_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  key TEXT NOT NULL,
  ledger TEXT NOT NULL,
  PRIMARY KEY (kitchen, key)
) STRICT;

CREATE TABLE pool_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  item TEXT NOT NULL,
  pool TEXT NOT NULL,
  PRIMARY KEY (kitchen, item)
) STRICT;

CREATE TABLE name_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  kind TEXT NOT NULL CHECK (kind IN ('item', 'part')),
  name TEXT NOT NULL,
  PRIMARY KEY (kitchen, kind, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE question (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  speaker TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (kitchen, speaker)
) STRICT;
`;
