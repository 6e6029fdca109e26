-- A file of version 5 as the program of that version wrote it: one kitchen, three turns.
PRAGMA application_id = 1112296264;
PRAGMA user_version = 5;
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
  body TEXT NOT NULL, lot INTEGER,
  FOREIGN KEY (kitchen, message) REFERENCES message (kitchen, id)
) STRICT;
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
  body TEXT, chat INTEGER NOT NULL DEFAULT 0,
  UNIQUE (bot, update_id)
) STRICT;
CREATE TABLE stranger_count (
  bot TEXT NOT NULL PRIMARY KEY,
  updates INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
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
CREATE TABLE group_chat (
  bot TEXT NOT NULL,
  chat INTEGER NOT NULL,
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  is_left INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (bot, chat)
) STRICT, WITHOUT ROWID;
CREATE TABLE lot_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  id INTEGER NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('open', 'closed', 'dropped')),
  opened_at TEXT NOT NULL,
  PRIMARY KEY (kitchen, id)
) STRICT, WITHOUT ROWID;
INSERT INTO kitchen VALUES('home','{"unit":"lb","currency":"USD","timezone":"America/Chicago","language":"en","laborRatePerHour":{"$d":"18.5"},"laborAvoidable":true}','2026-11-26T08:02:29.546Z');
INSERT INTO message VALUES('home','m1','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r1');
INSERT INTO message VALUES('home','m2','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r2');
INSERT INTO message VALUES('home','m3','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r3');
INSERT INTO fact VALUES(1,'home','m1','e1','lead','2026-03-06T15:00:00.000Z',1,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}',NULL);
INSERT INTO fact VALUES(2,'home','m1','e1','lead','2026-03-06T15:00:00.000Z',1,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}',NULL);
INSERT INTO fact VALUES(3,'home','m2','e2','lead','2026-03-06T15:00:00.000Z',2,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}',NULL);
INSERT INTO fact VALUES(4,'home','m2','e2','lead','2026-03-06T15:00:00.000Z',2,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}',NULL);
INSERT INTO fact VALUES(5,'home','m3','e3','lead','2026-03-06T15:00:00.000Z',3,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}',NULL);
INSERT INTO fact VALUES(6,'home','m3','e3','lead','2026-03-06T15:00:00.000Z',3,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}',NULL);
INSERT INTO test_row VALUES('home',1,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO test_row VALUES('home',2,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO test_row VALUES('home',3,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO question VALUES('home','lead','{"askedAt":"2026-03-06T15:00:00.000Z","asked":{"id":"ask-replace-or-add","args":{"part":{"is":"name","name":"trim"},"before":{"is":"weight","grams":{"$d":"6440.123456789012345678901234567890123"}},"times":2,"of":{"is":"list","of":[{"id":"no"}],"by":"comma"}}},"choices":{"add":{"kind":"weigh","part":"trim","weight":{"$d":"6440.123456789012345678901234567890123"},"mode":"add"},"no":{"kind":"no"}},"wants":{"held":{"kind":"portionWeights","eachList":[{"$d":"453.59237"},{"$d":"0.1"}]},"slot":"item"},"again":{"said":{"kind":"correct","number":{"weight":{"$d":"6440.123456789012345678901234567890123"},"count":12}},"accepts":{"kind":"correct","weight":{"$d":"6440.123456789012345678901234567890123"},"sure":true}},"recorded":false,"repeats":3}');
CREATE TRIGGER message_is_never_edited BEFORE UPDATE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER message_is_never_deleted BEFORE DELETE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_edited BEFORE UPDATE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_deleted BEFORE DELETE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE INDEX fact_by_test ON fact (kitchen, test, seq);
CREATE INDEX fact_by_speaker ON fact (kitchen, speaker, seq);
CREATE INDEX test_row_by_status ON test_row (kitchen, status, item, closed_at, id);
CREATE INDEX inbox_by_age ON inbox (received_at) WHERE state <> 'waiting';
CREATE UNIQUE INDEX member_by_person ON member (person);
CREATE UNIQUE INDEX invite_by_hash ON invite (hash);
CREATE INDEX inbox_waiting ON inbox (bot, chat, seq) WHERE state = 'waiting';
CREATE INDEX outbox_by_chat ON outbox (bot, state, chat, seq);
CREATE INDEX card_by_test ON card (bot, kitchen, test);
CREATE INDEX button_by_scope ON button (bot, chat, scope);
CREATE INDEX fact_by_lot ON fact (kitchen, lot, seq) WHERE lot IS NOT NULL;
CREATE INDEX test_row_by_closing ON test_row (kitchen, status, closed_at, id);
CREATE INDEX lot_row_open ON lot_row (kitchen, id) WHERE status = 'open';
