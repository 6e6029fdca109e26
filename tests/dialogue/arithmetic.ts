// Expected figures are written as the sum that a cook would work out, "(105.08 - 1.65) / 11.2", and worked out here,
// apart from the program's own decimals.

/** The value of a sum of plain figures with + - * / and brackets. Throws on anything else. */
export function valueOf(sum: string): number {
  const tokens = sum.match(/\d+(?:\.\d+)?|[-+*/()]/g) ?? [];
  if (tokens.join('') !== sum.replace(/\s/g, '')) throw new Error(`no sum: ${sum}`);
  const left = [...tokens];
  const value = terms(left);
  if (left.length > 0) throw new Error(`no sum: ${sum}`);
  return value;
}

function terms(left: string[]): number {
  let value = factors(left);
  for (let sign = left[0]; sign === '+' || sign === '-'; sign = left[0]) {
    left.shift();
    const next = factors(left);
    value = sign === '+' ? value + next : value - next;
  }
  return value;
}

function factors(left: string[]): number {
  let value = figure(left);
  for (let sign = left[0]; sign === '*' || sign === '/'; sign = left[0]) {
    left.shift();
    const next = figure(left);
    value = sign === '*' ? value * next : value / next;
  }
  return value;
}

function figure(left: string[]): number {
  const token = left.shift();
  if (token === '-') return -figure(left);
  if (token !== '(') return Number(token);
  const value = terms(left);
  left.shift();
  return value;
}

const SAME = 1e-8;

/** Whether two figures are the same to 8 significant digits. */
export const isSame = (one: number, other: number): boolean =>
  Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other)) + Number.EPSILON;
