-- A file of version 2 as the program of that version wrote it: one kitchen, three turns, a team and its post.
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
  body TEXT,
  UNIQUE (bot, update_id)
) STRICT;
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
CREATE TABLE stranger_count (
  bot TEXT NOT NULL PRIMARY KEY,
  updates INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO kitchen VALUES('home','{"unit":"lb","currency":"USD","timezone":"America/Chicago","language":"en","laborRatePerHour":{"$d":"18.5"},"laborAvoidable":true}','2026-03-06T15:00:00.000Z');
INSERT INTO message VALUES('home','m1','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r1');
INSERT INTO message VALUES('home','m2','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r2');
INSERT INTO message VALUES('home','m3','lead','2026-03-06T15:00:00.000Z','trim 1.1','recorded','r3');
INSERT INTO fact VALUES(1,'home','m1','e1','lead','2026-03-06T15:00:00.000Z',1,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}');
INSERT INTO fact VALUES(2,'home','m1','e1','lead','2026-03-06T15:00:00.000Z',1,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}');
INSERT INTO fact VALUES(3,'home','m2','e2','lead','2026-03-06T15:00:00.000Z',2,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}');
INSERT INTO fact VALUES(4,'home','m2','e2','lead','2026-03-06T15:00:00.000Z',2,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}');
INSERT INTO fact VALUES(5,'home','m3','e3','lead','2026-03-06T15:00:00.000Z',3,'ribeye','received','{"type":"received","item":"ribeye","grams":"6440.123456789012345678901234567890123","perLb":"7.4"}');
INSERT INTO fact VALUES(6,'home','m3','e3','lead','2026-03-06T15:00:00.000Z',3,'ribeye','weighed','{"type":"weighed","part":"trim","grams":"498.951607","mode":"set"}');
INSERT INTO test_row VALUES('home',1,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO test_row VALUES('home',2,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO test_row VALUES('home',3,'ribeye','closed','2026-03-06T15:00:00.000Z','2026-03-06T15:00:00.000Z',NULL);
INSERT INTO question VALUES('home','lead','{"askedAt":"2026-03-06T15:00:00.000Z","asked":{"id":"ask-replace-or-add","args":{"part":{"is":"name","name":"trim"},"before":{"is":"weight","grams":{"$d":"6440.123456789012345678901234567890123"}},"times":2,"of":{"is":"list","of":[{"id":"no"}],"by":"comma"}}},"choices":{"add":{"kind":"weigh","part":"trim","weight":{"$d":"6440.123456789012345678901234567890123"},"mode":"add"},"no":{"kind":"no"}},"wants":{"held":{"kind":"portionWeights","eachList":[{"$d":"453.59237"},{"$d":"0.1"}]},"slot":"item"},"again":{"said":{"kind":"correct","number":{"weight":{"$d":"6440.123456789012345678901234567890123"},"count":12}},"accepts":{"kind":"correct","weight":{"$d":"6440.123456789012345678901234567890123"},"sure":true}},"recorded":false,"repeats":3}');
INSERT INTO member VALUES('home',5000000001,'Ines','owner');
INSERT INTO member VALUES('home',5000000002,'Tobin','cutter');
INSERT INTO invite VALUES('home','a1','lead','2026-03-07T15:00:00.000Z',0,NULL);
INSERT INTO inbox VALUES(1,'7000000001',11,'2026-03-06T15:00:00.000Z','done',0,NULL);
INSERT INTO inbox VALUES(2,'7000000001',12,'2026-03-06T15:01:00.000Z','waiting',1,'{"update_id":12}');
INSERT INTO outbox VALUES(1,'7000000001',5000000001,'message','trim 1.1 lb',0,'2026-03-06T15:01:00.000Z','waiting');
INSERT INTO outbox VALUES(2,'7000000001',5000000002,'message','',0,'2026-03-06T15:01:00.000Z','unknown');
INSERT INTO stranger_count VALUES('7000000001',3);
CREATE INDEX fact_by_test ON fact (kitchen, test, seq);
CREATE INDEX fact_by_speaker ON fact (kitchen, speaker, seq);
CREATE INDEX test_row_by_status ON test_row (kitchen, status, item, closed_at, id);
CREATE TRIGGER message_is_never_edited BEFORE UPDATE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER message_is_never_deleted BEFORE DELETE ON message BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_edited BEFORE UPDATE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER fact_is_never_deleted BEFORE DELETE ON fact BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE INDEX inbox_waiting ON inbox (bot, seq) WHERE state = 'waiting';
CREATE INDEX inbox_by_age ON inbox (received_at) WHERE state <> 'waiting';
CREATE INDEX outbox_by_chat ON outbox (bot, state, chat, seq);
PRAGMA user_version = 2;
PRAGMA application_id = 1112296264;
