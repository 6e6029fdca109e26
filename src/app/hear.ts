// From the bytes of a voice note to words: decoded, heard with the ear set for what may be said now, and kept if it was
// no noise. What the words say is taken up like a typed message (`Message.heard`), by the same path.
import { type Kitchen, openTests } from '../core/kitchen.ts';
import { say } from '../core/reply.ts';
import { expectation } from '../language/ear/expected.ts';
import type { Ear } from '../language/ear/ear.ts';
import type { Listening } from '../language/ear/grammar.ts';
import { isNoise } from './heard.ts';
import type { Hearing, HearNote } from './ports/hearing.ts';
import { type Decode, type Recogniser, SpeechError } from './ports/speech.ts';
import type { Table } from './ports/table.ts';
import type { Voice } from './voice.ts';

export interface Hearer {
  readonly voice: Pick<Voice, 'language'>;
  readonly ear: Ear;
  readonly decode: Decode;
  readonly recogniser: Recogniser;
}

/** The ear of a kitchen. */
export const hearerAt = (hearer: Hearer, table: Pick<Table, 'kitchen' | 'questionFor'>): HearNote =>
  hearWith(hearer, (speaker) => listeningIn(table.kitchen(), table.questionFor(speaker) !== undefined));

/** An ear with no kitchen behind it. */
export const plainHearer = (hearer: Hearer): HearNote => hearWith(hearer, () => NOWHERE);

const NOWHERE: Listening = { stage: undefined, items: new Set(), parts: new Set(), onTable: new Set() };

function hearWith(
  { voice, ear, decode, recogniser }: Hearer,
  listening: (speaker: string) => Listening,
): HearNote {
  return async (bytes, speaker): Promise<Hearing> => {
    try {
      const sound = await decode(bytes);
      const expected = expectation(voice.language, ear, listening(speaker));
      const { words: text, confidence } = await recogniser.hear(sound, expected);
      const heard = { confidence };
      if (text === '' || isNoise(heard)) return { is: 'nothing', text, heard, reply: say('heard-nothing') };
      return { is: 'words', text, heard };
    } catch (error) {
      if (!(error instanceof SpeechError)) throw error;
      return { is: 'trouble', fault: error.fault, reply: say(`speech-${error.fault}`) };
    }
  };
}

function listeningIn(kitchen: Kitchen, isAsked: boolean): Listening {
  const open = openTests(kitchen);
  const onTable = new Set(open.flatMap(({ item, parts }) => [item, ...parts.map(({ part }) => part)]));
  const stage = isAsked ? 'asked' : open.length > 0 ? 'open' : 'idle';
  return { stage, items: kitchen.items, parts: kitchen.parts, onTable };
}
