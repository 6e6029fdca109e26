// The tables of version 2: who may talk to a kitchen, and the post of its bot. An update that was handled keeps its number
// alone, a letter that was sent leaves nothing.

export const SCHEMA_2 = `
CREATE TABLE member (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  person INTEGER NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('owner', 'lead', 'cutter')),
  PRIMARY KEY (kitchen, person),
  UNIQUE (kitchen, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE invite (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  hash TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('owner', 'lead', 'cutter')),
  expires_at TEXT NOT NULL,
  claims INTEGER NOT NULL DEFAULT 0,
  used_by INTEGER,
  PRIMARY KEY (kitchen, hash)
) STRICT, WITHOUT ROWID;

CREATE TABLE inbox (
  seq INTEGER PRIMARY KEY,
  bot TEXT NOT NULL,
  update_id INTEGER NOT NULL,
  received_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('waiting', 'done', 'parked')),
  failures INTEGER NOT NULL DEFAULT 0,
  body TEXT,
  UNIQUE (bot, update_id)
) STRICT;
CREATE INDEX inbox_waiting ON inbox (bot, seq) WHERE state = 'waiting';
CREATE INDEX inbox_by_age ON inbox (received_at) WHERE state <> 'waiting';

CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('message', 'leave')),
  text TEXT NOT NULL,
  fleeting INTEGER NOT NULL,
  created_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('waiting', 'sending', 'unknown', 'parked'))
) STRICT;
CREATE INDEX outbox_by_chat ON outbox (bot, state, chat, seq);

CREATE TABLE stranger_count (
  bot TEXT NOT NULL PRIMARY KEY,
  updates INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
`;
