// The weights of the sureness, fitted to clips: logistic regression by Newton's method, with a little ridge so that what never
// goes wrong gets no endless weight. What was heard right counts as 1; wrong hearings, talk and noise as 0.
import { type Evidence, FEATURES, featuresOf } from '../../../src/speech/embedded/agreement.ts';
import { round } from '../measure.ts';

export interface Example extends Evidence {
  readonly isRight: boolean;
}

const RIDGE = 0.1;
const STEPS = 50;

export function fitted(examples: readonly Example[]): Readonly<Record<string, number>> {
  const rows = examples.map((example) => {
    const features = featuresOf(example);
    return { x: FEATURES.map((name) => features[name]), y: example.isRight ? 1 : 0 };
  });
  let weights = FEATURES.map(() => 0);
  for (let step = 0; step < STEPS; step += 1) {
    const slope = weights.map((weight) => -RIDGE * weight);
    const curve: number[][] = FEATURES.map((_, i) => FEATURES.map((__, j) => (i === j ? RIDGE : 0)));
    for (const { x, y } of rows) {
      const p = 1 / (1 + Math.exp(-dot(weights, x)));
      x.forEach((xi, i) => {
        slope[i] = (slope[i] ?? 0) + (y - p) * xi;
        x.forEach((xj, j) => {
          const row = curve[i];
          if (row !== undefined) row[j] = (row[j] ?? 0) + p * (1 - p) * xi * xj;
        });
      });
    }
    const change = solved(curve, slope);
    weights = weights.map((weight, i) => weight + (change[i] ?? 0));
  }
  return Object.fromEntries(FEATURES.map((name, i) => [name, round(weights[i] ?? 0, 3)]));
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0);

/** Gauss-Jordan, without pivots: the ridge keeps the diagonal above zero. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  rows.forEach((row, i) => {
    const pivot = row[i] ?? 1;
    const whole = row.map((each) => each / pivot);
    rows[i] = whole;
    rows.forEach((other, k) => {
      if (k !== i) rows[k] = other.map((each, j) => each - (other[i] ?? 0) * (whole[j] ?? 0));
    });
  });
  return rows.map((row) => row.at(-1) ?? 0);
}
