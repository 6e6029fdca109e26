// The tables of version 5: lots of ground meat. A fact carries the number of its lot, as it does that of its test.

export const SCHEMA_5 = `
ALTER TABLE fact ADD COLUMN lot INTEGER;
CREATE INDEX fact_by_lot ON fact (kitchen, lot, seq) WHERE lot IS NOT NULL;
CREATE INDEX test_row_by_closing ON test_row (kitchen, closed_at, id) WHERE status = 'closed';

CREATE TABLE lot_row (
  kitchen TEXT NOT NULL REFERENCES kitchen (id),
  id INTEGER NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('open', 'closed', 'dropped')),
  opened_at TEXT NOT NULL,
  PRIMARY KEY (kitchen, id)
) STRICT, WITHOUT ROWID;
CREATE INDEX lot_row_open ON lot_row (kitchen, id) WHERE status = 'open';
`;
