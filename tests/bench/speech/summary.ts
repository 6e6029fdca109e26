// What the clips come to: shares by condition and voice, false records, the curve of right against wrong, time and memory.
import { percentile, round } from '../measure.ts';
import type { HeardClip } from './clips.ts';

const POINTS = [0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.92, 0.94, 0.96, 0.98];

export function summary(clips: readonly HeardClip[]): Readonly<Record<string, unknown>> {
  const said = clips.filter((clip) => clip.said !== undefined);
  const seconds = clips.reduce((sum, clip) => sum + clip.seconds, 0);
  const ms = clips.map((clip) => clip.ms);
  return {
    clips: clips.length,
    byCondition: grouped(clips, ({ condition }) => condition),
    byVoice: grouped(said, ({ condition, voice }) => `${condition} ${voice}`),
    curve: POINTS.map((point) => atPoint(clips, point)),
    wrong: clips
      .filter(isWrong)
      .map(({ path, heard, confidence }) => `${path}: ${heard} (${round(confidence, 3)})`),
    timeOverAudio: round(ms.reduce((sum, each) => sum + each, 0) / 1000 / seconds, 3),
    cpuOverAudio: round(clips.reduce((sum, { cpuMs }) => sum + cpuMs, 0) / 1000 / seconds, 3),
    noteMs: { p50: Math.round(percentile(ms, 0.5)), p95: Math.round(percentile(ms, 0.95)) },
    rssMb: Math.round(process.memoryUsage().rss / 2 ** 20),
  };
}

const isWrong = ({ end, isRight }: HeardClip): boolean => end === 'recorded' && !isRight;

function grouped(clips: readonly HeardClip[], keyOf: (clip: HeardClip) => string): Record<string, unknown> {
  const groups: Record<string, HeardClip[]> = {};
  for (const clip of clips) (groups[keyOf(clip)] ??= []).push(clip);
  return Object.fromEntries(Object.entries(groups).map(([key, of]) => [key, shares(of)]));
}

function shares(clips: readonly HeardClip[]): Record<string, number> {
  const share = (fits: (clip: HeardClip) => boolean): number =>
    round(clips.filter(fits).length / clips.length, 3);
  return {
    clips: clips.length,
    wordsRight: share(({ isRight }) => isRight),
    recordedRight: share(({ end, isRight }) => end === 'recorded' && isRight),
    recordedWrong: share(isWrong),
    askedRight: share(({ end, isRight }) => end === 'asked' && isRight),
    askedWrong: share(({ end, isRight }) => end === 'asked' && !isRight),
    rejected: share(({ end }) => end === 'rejected'),
  };
}

/** What would be recorded, were it from this confidence on. */
function atPoint(clips: readonly HeardClip[], point: number): Record<string, number> {
  const taken = clips.filter(({ confidence, hasEntry }) => confidence >= point && hasEntry);
  const said = clips.filter((clip) => clip.said !== undefined).length;
  return {
    recordFrom: point,
    right: round(taken.filter(({ isRight }) => isRight).length / said, 3),
    wrong: round(taken.filter((clip) => !clip.isRight && clip.said !== undefined).length / clips.length, 4),
    falseRecords: taken.filter((clip) => clip.said === undefined).length,
  };
}
