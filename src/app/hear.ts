// From the bytes of a voice note to words: decoded, heard with the ear set for what may be said now, and kept if it was
// no noise. What the words say is taken up like a typed message (`Message.heard`), by the same path.
import { type Kitchen, openTests } from '../core/kitchen.ts';
import { say } from '../core/reply.ts';
import { expectation } from '../language/ear/expected.ts';
import type { Ear } from '../language/ear/ear.ts';
import type { Listening } from '../language/ear/grammar.ts';
import type { Listener } from '../language/listen.ts';
import { parse } from '../language/parse.ts';
import { isNoise } from './heard.ts';
import type { Hearing, HearNote } from './ports/hearing.ts';
import { type Decode, type Expected, type Recogniser, SpeechError } from './ports/speech.ts';
import type { Table } from './ports/table.ts';
import { plainListener, type Voice } from './voice.ts';

export interface Hearer {
  readonly voice: Pick<Voice, 'language' | 'listenerFor'>;
  readonly ear: Ear;
  readonly decode: Decode;
  readonly recogniser: Recogniser;
}

/** The ear of a kitchen. */
export const hearerAt = (hearer: Hearer, table: Pick<Table, 'kitchen' | 'questionFor'>): HearNote =>
  hearWith(hearer, (speaker) => ({
    listening: listeningIn(table.kitchen(), table.questionFor(speaker) !== undefined),
    listener: hearer.voice.listenerFor(table.kitchen()),
  }));

/** An ear with no kitchen behind it. */
export const plainHearer = (hearer: Hearer): HearNote => {
  const listener = plainListener(hearer.voice.language, { unit: 'lb', currency: 'USD' });
  return hearWith(hearer, () => ({ listening: NOWHERE, listener }));
};

/** Where the talk stands, and who reads what is heard. */
interface Place {
  readonly listening: Listening;
  readonly listener: Listener;
}

const NOWHERE: Listening = { stage: undefined, items: new Set(), parts: new Set(), onTable: new Set() };

function hearWith({ ear, decode, recogniser }: Hearer, placeOf: (speaker: string) => Place): HearNote {
  return async (bytes, speaker): Promise<Hearing> => {
    try {
      const sound = await decode(bytes);
      const { words: text, confidence } = await recogniser.hear(sound, expectedAt(placeOf(speaker), ear));
      const heard = { confidence };
      if (text === '' || isNoise(heard)) return { is: 'nothing', text, heard, reply: say('heard-nothing') };
      return { is: 'words', text, heard };
    } catch (error) {
      if (!(error instanceof SpeechError)) throw error;
      return { is: 'trouble', fault: error.fault, reply: say(`speech-${error.fault}`) };
    }
  };
}

/** What an engine is told before it listens there. */
export const expectedAt = ({ listening, listener }: Place, ear: Ear): Expected => ({
  ...expectation(listener.language, ear, listening),
  isSame: comparing(listener, listening.stage === 'asked'),
});

const comparing =
  (listener: Listener, answering: boolean) =>
  (words: string, others: string): boolean =>
    words === others || meaning(listener, words, answering) === meaning(listener, others, answering);

const meaning = (listener: Listener, words: string, answering: boolean): string =>
  JSON.stringify(parse(listener, words, { answering }));

function listeningIn(kitchen: Kitchen, isAsked: boolean): Listening {
  const open = openTests(kitchen);
  const onTable = new Set(open.flatMap(({ item, parts }) => [item, ...parts.map(({ part }) => part)]));
  const stage = isAsked ? 'asked' : open.length > 0 ? 'open' : 'idle';
  return { stage, items: kitchen.items, parts: kitchen.parts, onTable };
}
