// A text cell that a spreadsheet would run as a formula gets an apostrophe before it. Source: OWASP, "CSV Injection": text that
// begins with = + - @, a tab, a carriage return or a line feed, and the full-width forms of the signs; blanks before them
// are no protection.
const STARTS_FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/;

export const guarded = (text: string): string => (STARTS_FORMULA.test(text) ? `'${text}` : text);
