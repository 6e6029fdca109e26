// Faults by script: which calls they meet, and what the bot gets instead of a clean answer.
import { seeded } from './seeded.ts';

export type FaultAnswer =
  | {
      readonly kind: 'error';
      readonly code: number;
      readonly description?: string;
      readonly retryAfter?: number;
      readonly migrateTo?: number;
    }
  | { readonly kind: 'html'; readonly code: number }
  /** The header promises more than comes. */
  | { readonly kind: 'truncated' }
  /** The connection stays open and nothing ever comes. */
  | { readonly kind: 'mute' }
  | { readonly kind: 'drop' }
  | { readonly kind: 'late'; readonly milliseconds: number };

/** Counted over the calls that the fault's method and chat match, from 1. */
export type When =
  | { readonly kind: 'always' }
  | { readonly kind: 'first'; readonly count: number }
  | { readonly kind: 'from'; readonly nth: number }
  | { readonly kind: 'calls'; readonly nth: readonly number[] }
  | { readonly kind: 'chance'; readonly probability: number; readonly seed: number };

export interface Fault {
  /** A method of the service, `file` for a download, `webhook` for a delivery; all but `webhook` where absent. */
  readonly method?: string;
  readonly chat?: number;
  readonly when: When;
  readonly answer: FaultAnswer;
  /** Whether the call is carried out all the same. By default only for truncated and late answers. */
  readonly effect?: boolean;
}

interface Armed {
  readonly id: number;
  readonly fault: Fault;
  readonly random: () => number;
  met: number;
}

export interface Faults {
  armed: Armed[];
  lastId: number;
}

export const newFaults = (): Faults => ({ armed: [], lastId: 0 });

/** The number by which it is healed. */
export function arm(faults: Faults, fault: Fault): number {
  faults.lastId += 1;
  const random = seeded(fault.when.kind === 'chance' ? fault.when.seed : 0);
  faults.armed.push({ id: faults.lastId, fault, random, met: 0 });
  return faults.lastId;
}

/** One of them, or all. */
export function heal(faults: Faults, id?: number): void {
  faults.armed = id === undefined ? [] : faults.armed.filter((one) => one.id !== id);
}

/** The fault for this call: each that matches counts it, the first that is due answers. */
export function nextFault(faults: Faults, method: string, chat: number | undefined): Fault | undefined {
  const due = faults.armed.filter(({ fault }) => matches(fault, method, chat)).filter(isDue);
  return due[0]?.fault;
}

export function takesEffect({ effect, answer }: Fault): boolean {
  return effect ?? (answer.kind === 'truncated' || answer.kind === 'late');
}

function matches(fault: Fault, method: string, chat: number | undefined): boolean {
  const isMethod =
    fault.method === undefined ? method !== 'webhook' : fault.method.toLowerCase() === method.toLowerCase();
  return isMethod && (fault.chat === undefined || fault.chat === chat);
}

function isDue(one: Armed): boolean {
  one.met += 1;
  const { when } = one.fault;
  switch (when.kind) {
    case 'always':
      return true;
    case 'first':
      return one.met <= when.count;
    case 'from':
      return one.met >= when.nth;
    case 'calls':
      return when.nth.includes(one.met);
    case 'chance':
      return one.random() < when.probability;
  }
}
