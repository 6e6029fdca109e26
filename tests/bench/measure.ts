// Medians and percentiles of measured times.

/** The value below which a share of the sorted values lies. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}

export const median = (values: readonly number[]): number => percentile(values, 0.5);

export const round = (value: number, places = 0): number => Math.round(value * 10 ** places) / 10 ** places;

export const microseconds = (from: bigint): number => Number(process.hrtime.bigint() - from) / 1000;
