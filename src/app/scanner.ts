// Looks each second what is due in a kitchen. No long timer: a machine that slept, or whose clock was set, would miss it.
import type { Table, Telling, Told } from './ports/table.ts';

export interface ScannerParts {
  readonly table: Pick<Table, 'tellDue'>;
  readonly onTold: (told: Told) => void;
  /** What was due stays due, and is tried again at the next look. */
  readonly onTrouble: (error: unknown) => void;
  readonly post?: Telling['post'];
  /** Milliseconds of UTC. */
  readonly clock?: () => number;
}

const EVERY_MS = 1000;

export interface Scanner {
  /** One look; returns when all that was due is told. */
  readonly look: () => Promise<void>;
  /** Resolves when the look that is on its way has ended. */
  readonly stop: () => Promise<void>;
}

/** Looks at once, and then each second. */
export function startScanner(parts: ScannerParts): Scanner {
  let looking: Promise<void> | undefined;
  const look = (): Promise<void> =>
    (looking ??= tell(parts).finally(() => {
      looking = undefined;
    }));
  const timer = setInterval(() => void look(), EVERY_MS);
  void look();
  return {
    look,
    stop: async () => {
      clearInterval(timer);
      await looking;
    },
  };
}

async function tell({ table, post, onTold, onTrouble, clock = Date.now }: ScannerParts): Promise<void> {
  try {
    const at = new Date(clock()).toISOString();
    const all = await table.tellDue(post === undefined ? { at } : { at, post });
    for (const told of all) onTold(told);
  } catch (error) {
    onTrouble(error);
  }
}
