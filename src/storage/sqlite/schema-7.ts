// The tables of version 7: an answer that is read out is a letter of its own kind, and of an update it is known whether the
// sentence that goes before its answer was posted.

export const SCHEMA_7 = `
ALTER TABLE inbox ADD COLUMN is_told_of INTEGER NOT NULL DEFAULT 0;

DROP INDEX outbox_by_chat;
ALTER TABLE outbox RENAME TO outbox_before;
CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('message', 'file', 'voice', 'card', 'reaction', 'toast', 'bare', 'leave')),
  text TEXT NOT NULL,
  about INTEGER,
  buttons TEXT,
  kitchen TEXT,
  test INTEGER,
  press TEXT,
  file_name TEXT,
  file_type TEXT,
  file_bytes BLOB,
  alarm INTEGER NOT NULL DEFAULT 0,
  fleeting INTEGER NOT NULL,
  created_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('waiting', 'sending', 'unknown', 'offered', 'parked'))
) STRICT;
INSERT INTO outbox SELECT * FROM outbox_before;
DROP TABLE outbox_before;
CREATE INDEX outbox_by_chat ON outbox (bot, state, chat, seq);
`;
