// The ports to whatever hears and speaks. They are defined by tests/app/ports/speech.contract.ts, so that another engine
// can stand behind them. An engine turns sound into words; what the words say is the language's, as if they were typed.

/** Mono, at 16,000 samples a second, each from -1 to 1. */
export interface Sound {
  readonly samples: Float32Array;
}
export const SAMPLES_PER_SECOND = 16_000;

/** What may be said now: an engine listens for it as narrowly as it can. */
export interface Expected {
  /** Every sentence that is listened for, in the JSpeech Grammar Format. */
  readonly grammar: string;
  /** The kitchen's words with their phones, each way they are said. */
  readonly pronounced: readonly (readonly [word: string, phones: string])[];
  /** Phones by rule, for words that the engine's own dictionary lacks. */
  readonly spelled: readonly (readonly [word: string, phones: string])[];
  /** Sentences that differ from this one in one number or name, for engines that compare what is alike. */
  readonly near: (words: string) => readonly string[];
  /** Whether two sentences come to the same ("of" or "at", "pound" or "pounds"), so that it is no matter which was said. */
  readonly isSame: (words: string, others: string) => boolean;
  /** Whether they name a cut that neither this kitchen nor most others have, or more of a unit than anybody says: likelier misheard than said. */
  readonly isUnusual: (words: string) => boolean;
  /** Whether they hold a number that sounds much like another one ("fourteen" and "forty"). */
  readonly isMixable: (words: string) => boolean;
  /** The same words as running text, for engines that take a hint and no grammar. */
  readonly hint: string;
}

export interface Transcript {
  /** Lower case, numbers in words; empty where nothing was said that is listened for. */
  readonly words: string;
  /** 0 to 1: our own estimate that these are the words. */
  readonly confidence: number;
}

/** Trouble with a note or with the engine, classed for one plain sentence; anything else that is thrown is a bug. */
export type SpeechFault =
  | 'tooLarge'
  | 'tooLong'
  | 'empty'
  | 'truncated'
  | 'wrongType'
  | 'timeout'
  | 'nonsense'
  | 'unavailable'
  /** The engine is an optional package, or needs files, that are not there. */
  | 'notInstalled'
  /** The setting says that nothing is heard. */
  | 'off';

export class SpeechError extends Error {
  readonly fault: SpeechFault;
  constructor(fault: SpeechFault, detail: string, options?: ErrorOptions) {
    super(`speech: ${fault}: ${detail}`, options);
    this.fault = fault;
  }
}

export interface Recogniser {
  /** As it is named in the details of a card. */
  readonly name: string;
  hear(sound: Sound, expected: Expected): Promise<Transcript>;
  close(): Promise<void>;
}

/** Bytes of a voice note to sound. Rejects with a SpeechError. */
export type Decode = (bytes: Uint8Array) => Promise<Sound>;

/** A short text as a voice note: OGG/Opus. */
export type SpeakNote = (text: string) => Promise<Uint8Array>;
