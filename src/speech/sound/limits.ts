// How large and how long a note may be. A cook says an entry in some five seconds.
import { SpeechError } from '../../app/ports/speech.ts';

export interface Limits {
  readonly mostBytes: number;
  readonly leastSeconds: number;
  readonly mostSeconds: number;
}

/** A minute is some 250 kB as a voice note, and under 6 MB as WAV at 48,000 a second. */
export const LIMITS: Limits = { mostBytes: 6_000_000, leastSeconds: 0.2, mostSeconds: 60 };

/** Throws a SpeechError where a length is beyond the limits. */
export function within({ leastSeconds, mostSeconds }: Limits, seconds: number): void {
  if (seconds > mostSeconds) throw new SpeechError('tooLong', `${Math.round(seconds)} s`);
  if (seconds < leastSeconds) throw new SpeechError('empty', `${seconds.toFixed(2)} s`);
}
