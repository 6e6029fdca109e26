// Every call as it came and went: the oracle of the tests.
import type { Params } from './http/params.ts';
import type { Fault } from './faults/faults.ts';

export interface Answered {
  /** `dropped`, `mute` and `gone` (the bot hung up first): it read no answer. */
  readonly kind: 'pending' | 'answered' | 'html' | 'truncated' | 'dropped' | 'mute' | 'gone';
  readonly status?: number;
  readonly body?: unknown;
}

export interface Call {
  readonly number: number;
  readonly atMs: number;
  readonly method: string;
  readonly parameters: Params;
  readonly chat: number | undefined;
  readonly fault?: Fault;
  /** It was carried out, whatever was answered. */
  took: boolean;
  answer: Answered;
}

export interface Log {
  readonly calls: Call[];
  /** Told when a call takes effect or is answered. */
  readonly watchers: Set<() => void>;
}

export interface CallFilter {
  readonly method?: string;
  readonly chat?: number;
  /** The whole `text` of the call. */
  readonly text?: string;
  readonly took?: boolean;
}

type NewCall = Pick<Call, 'method' | 'parameters' | 'chat' | 'fault'>;

export const newLog = (): Log => ({ calls: [], watchers: new Set() });

export function openCall(log: Log, call: NewCall): Call {
  const opened: Call = {
    number: log.calls.length + 1,
    atMs: Date.now(),
    ...call,
    took: false,
    answer: { kind: 'pending' },
  };
  log.calls.push(opened);
  return opened;
}

export function closeCall(log: Log, call: Call, answer: Answered): void {
  call.answer = answer;
  for (const watcher of [...log.watchers]) watcher();
}

export const callsIn = (log: Log, filter: CallFilter = {}): readonly Call[] =>
  log.calls.filter((call) => fits(call, filter));

function fits(call: Call, { method, chat, text, took }: CallFilter): boolean {
  return (
    (method === undefined || call.method.toLowerCase() === method.toLowerCase()) &&
    (chat === undefined || call.chat === chat) &&
    (text === undefined || call.parameters['text'] === text) &&
    (took === undefined || call.took === took)
  );
}

export interface Repeated {
  readonly chat: number | undefined;
  readonly text: string;
  readonly count: number;
}

/** Texts that arrived in a chat more than once. */
export function repeatedTexts(log: Log): readonly Repeated[] {
  const counts = new Map<string, Repeated>();
  for (const { chat, parameters } of callsIn(log, { method: 'sendMessage', took: true })) {
    const text = String(parameters['text']);
    const key = `${String(chat)} ${text}`;
    counts.set(key, { chat, text, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()].filter(({ count }) => count > 1);
}

/** Resolves when at least `count` calls fit and are answered or given up. */
export function awaitCalls(log: Log, filter: CallFilter, count: number): Promise<readonly Call[]> {
  return new Promise((resolve) => {
    const look = (): void => {
      const found = callsIn(log, filter).filter(({ answer }) => answer.kind !== 'pending');
      if (found.length < count) return;
      log.watchers.delete(look);
      resolve(found);
    };
    log.watchers.add(look);
    look();
  });
}
