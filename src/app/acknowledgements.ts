// From an update that came in to its first reply that arrived. Known in memory only: what a restart or a fault comes between
// is not measured. A letter is known again by its chat and its words, which are never told on.
import type { Delivery, Letter, LetterEnd, Update } from './ports/mailbox.ts';
import type { Metrics } from './ports/metrics.ts';

export interface Acknowledgements {
  readonly arrived: (updates: readonly Update[]) => void;
  readonly answered: (delivery: Delivery) => void;
  readonly taken: (letter: Letter) => void;
  readonly ended: (seq: number, end: LetterEnd) => void;
}

interface Waiting {
  readonly chat: number;
  readonly text: string;
  readonly atMs: number;
}

/** What is older than so many others is forgotten: a service that is away for hours must not fill the memory. */
const MOST = 1000;

export function newAcknowledgements(metrics: Metrics, nowMs = () => performance.now()): Acknowledgements {
  const arrivals = new Map<number, number>();
  const waiting = new Set<Waiting>();
  const underway = new Map<number, number>();
  return {
    arrived: (updates) => {
      for (const { id } of updates) remember(arrivals, id, nowMs());
    },
    answered: ({ update, letters: [letter] }) => {
      const atMs = arrivals.get(update);
      arrivals.delete(update);
      if (atMs === undefined || letter === undefined) return;
      waiting.add({ chat: letter.chat, text: letter.text, atMs });
      forgetOldest(waiting);
    },
    taken: ({ seq, chat, text }) => {
      // A notice may stand before its words.
      const own = [...waiting].find((each) => each.chat === chat && text.endsWith(each.text));
      if (own === undefined) return;
      waiting.delete(own);
      remember(underway, seq, own.atMs);
    },
    ended: (seq, end) => {
      const atMs = underway.get(seq);
      if (atMs === undefined || end === 'again') return;
      underway.delete(seq);
      if (end === 'sent') metrics.observe('acknowledgement', (nowMs() - atMs) / 1000);
    },
  };
}

/** The first time counts: an update may be brought twice, a letter taken again. */
function remember(times: Map<number, number>, id: number, atMs: number): void {
  if (!times.has(id)) times.set(id, atMs);
  for (const oldest of times.keys()) if (times.size > MOST) times.delete(oldest);
}

function forgetOldest(waiting: Set<Waiting>): void {
  for (const oldest of waiting) if (waiting.size > MOST) waiting.delete(oldest);
}
