// Version 3: closed tests are found by the time of closing, so that a summary reads its own days only.

export const SCHEMA_3 = `
CREATE INDEX test_row_by_closing ON test_row (kitchen, status, closed_at, id);
`;
