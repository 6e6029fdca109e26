// The faults that tests script most, by name.
import type { FaultAnswer, When } from './faults.ts';

export const flood = (retryAfter: number): FaultAnswer => ({ kind: 'error', code: 429, retryAfter });
export const serverError = (code = 500): FaultAnswer => ({ kind: 'error', code });
export const unauthorized: FaultAnswer = { kind: 'error', code: 401 };
export const conflict: FaultAnswer = { kind: 'error', code: 409 };
export const forbidden = (description = 'Forbidden: bot was blocked by the user'): FaultAnswer => ({
  kind: 'error',
  code: 403,
  description,
});
export const badRequest = (description: string): FaultAnswer => ({ kind: 'error', code: 400, description });
export const html = (code = 502): FaultAnswer => ({ kind: 'html', code });
export const truncated: FaultAnswer = { kind: 'truncated' };
export const mute: FaultAnswer = { kind: 'mute' };
export const drop: FaultAnswer = { kind: 'drop' };
export const late = (milliseconds: number): FaultAnswer => ({ kind: 'late', milliseconds });

export const always: When = { kind: 'always' };
export const first = (count: number): When => ({ kind: 'first', count });
export const from = (nth: number): When => ({ kind: 'from', nth });
export const calls = (...nth: readonly number[]): When => ({ kind: 'calls', nth });
export const chance = (probability: number, seed: number): When => ({ kind: 'chance', probability, seed });
