// What the looks at one sound come to: words, and how sure we are of them. The recogniser's own confidence is of no use, so
// it is asked in other ways: do two models hear the same? How much better do the words fit than the nearest others
// (another number, another name)? How much worse than any sounds at all?
import type { Transcript } from '../../app/ports/speech.ts';
import type { Looked } from './look.ts';

// Fitted by logistic regression on synthetic clips (docs/voice.md, `bench:speech --fit`), where wrong hearings, talk and noise
// count as one. Where nothing is near ("done") there is no margin, and `alone` stands for it.
const FIT = { agree: 1.482, alone: -0.266, margin: 0.468, fit: 2.009, mixable: -0.942, base: 0.843 } as const;
/** The units of the two features, and how far from 0 they count. */
const MARGIN = { unit: 200, least: -1, most: 3 } as const;
const FIT_A_FRAME = { unit: 10, least: -2.5, most: 1.5 } as const;

/** A fit for each frame, against any sounds at all, as talk has it and what is for us seldom. */
const POOR = -12;
/** Below the point of recording: such an entry waits for a word, however sure the rest is. */
const AT_MOST_WHEN_IN_DOUBT = 0.7;

/** What is known of one hearing. */
export interface Evidence {
  readonly looked: Looked;
  /** Hundredths of a second. */
  readonly frames: number;
  /** Whether the words hold a number that sounds much like another one. */
  readonly isMixable: boolean;
}

/** Undefined: nothing was said that is listened for. */
export function transcriptOf(
  evidence: Evidence | undefined,
  isUnusual: (words: string) => boolean,
): Transcript {
  if (evidence === undefined) return { words: '', confidence: 0 };
  const { looked } = evidence;
  const { words } = looked;
  const features = featuresOf(evidence);
  const sum = FEATURES.reduce((all, feature) => all + FIT[feature] * features[feature], 0);
  const sureness = 1 / (1 + Math.exp(-sum));
  const isBeaten = (marginOf(looked) ?? 0) < 0;
  const isInDoubt = !looked.agree || isBeaten || isPoor(evidence) || isUnusual(words);
  return { words, confidence: isInDoubt ? Math.min(sureness, AT_MOST_WHEN_IN_DOUBT) : sureness };
}

const fitAFrame = ({ looked: { own, sounds }, frames }: Evidence): number => (own - sounds) / frames;
const isPoor = (evidence: Evidence): boolean => fitAFrame(evidence) < POOR;
const marginOf = ({ own, near }: Looked): number | undefined => (near === undefined ? undefined : own - near);

export const FEATURES = ['agree', 'alone', 'margin', 'fit', 'mixable', 'base'] as const;
type Features = Readonly<Record<(typeof FEATURES)[number], number>>;

/** What the sureness is made of, each in its unit. */
export function featuresOf(evidence: Evidence): Features {
  const { looked, isMixable } = evidence;
  const margin = looked.agree ? marginOf(looked) : undefined;
  return {
    agree: looked.agree ? 1 : 0,
    alone: looked.agree && margin === undefined ? 1 : 0,
    margin: margin === undefined ? 0 : counted(margin, MARGIN),
    fit: counted(fitAFrame(evidence), FIT_A_FRAME),
    mixable: isMixable ? 1 : 0,
    base: 1,
  };
}

interface Range {
  readonly unit: number;
  readonly least: number;
  readonly most: number;
}

const counted = (value: number, { unit, least, most }: Range): number =>
  Math.max(least, Math.min(most, value / unit));
