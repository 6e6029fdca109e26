// The tables of version 3: groups, the cards that stand in the chats, the buttons that mean something, and letters of more
// kinds. A person is of one kitchen.

export const SCHEMA_3 = `
CREATE UNIQUE INDEX member_by_person ON member (person);
CREATE UNIQUE INDEX invite_by_hash ON invite (hash);

ALTER TABLE inbox ADD COLUMN chat INTEGER NOT NULL DEFAULT 0;
DROP INDEX inbox_waiting;
CREATE INDEX inbox_waiting ON inbox (bot, chat, seq) WHERE state = 'waiting';

DROP INDEX outbox_by_chat;
ALTER TABLE outbox RENAME TO outbox_before;
CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('message', 'file', 'card', 'reaction', 'toast', 'bare', 'leave')),
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
INSERT INTO outbox (seq, bot, chat, kind, text, fleeting, created_at, state)
  SELECT seq, bot, chat, kind, text, fleeting, created_at, state FROM outbox_before;
DROP TABLE outbox_before;
CREATE INDEX outbox_by_chat ON outbox (bot, state, chat, seq);

CREATE TABLE card (
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  test INTEGER NOT NULL,
  message INTEGER,
  text TEXT NOT NULL,
  buttons TEXT,
  is_open INTEGER NOT NULL,
  PRIMARY KEY (bot, chat, kitchen, test)
) STRICT, WITHOUT ROWID;
CREATE INDEX card_by_test ON card (bot, kitchen, test);

CREATE TABLE button (
  bot TEXT NOT NULL,
  nonce TEXT NOT NULL,
  chat INTEGER NOT NULL,
  scope TEXT NOT NULL,
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  person INTEGER,
  action TEXT NOT NULL,
  PRIMARY KEY (bot, nonce)
) STRICT, WITHOUT ROWID;
CREATE INDEX button_by_scope ON button (bot, chat, scope);

CREATE TABLE group_chat (
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  is_left INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (bot, chat)
) STRICT, WITHOUT ROWID;
`;
