// What one person may take of our time: a bucket of tokens that fills again. It goes by the service's own time of each
// message, so that what waited through an outage is not taken for a flood.

export interface Budget {
  /** `spent`: this message is the first too many since one was allowed; `out`: one more of those. */
  readonly take: (who: number, atMs: number) => 'allowed' | 'spent' | 'out';
}

interface Bucket {
  readonly tokens: number;
  readonly atMs: number;
  readonly told: boolean;
}

/** Buckets are forgotten, full or not, where there are more than this many: strangers must not fill the memory. */
const MOST = 10_000;

export function newBudget({ size, perSecond }: { size: number; perSecond: number }): Budget {
  const buckets = new Map<number, Bucket>();
  return {
    take: (who, atMs) => {
      const before = buckets.get(who) ?? { tokens: size, atMs, told: false };
      const since = Math.max(0, atMs - before.atMs) / 1000;
      const tokens = Math.min(size, before.tokens + since * perSecond);
      const isAllowed = tokens >= 1;
      if (buckets.size >= MOST) buckets.clear();
      buckets.set(who, {
        tokens: isAllowed ? tokens - 1 : tokens,
        atMs: Math.max(atMs, before.atMs),
        told: !isAllowed,
      });
      if (isAllowed) return 'allowed';
      return before.told ? 'out' : 'spent';
    },
  };
}
