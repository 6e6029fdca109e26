// A language: everything in its folder, read, checked and compiled once.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { load as parseYaml, YAMLException } from 'js-yaml';
import { z } from 'zod';
import { type Catalogue, catalogueSchema } from './catalogue.ts';
import type { Meaning } from './match.ts';
import { FOOD_SLOTS, type FoodWords, foodsSchema } from './food-words.ts';
import { type NameKind, type NameIndex, nameIndex } from './names.ts';
import { numbersSchema, type NumberWords, numberWords } from './number-words.ts';
import { compileSentences, DataFault, type IntentShapes, type SentenceFile } from './sentences.ts';
import type { State } from './template.ts';
import { teamSchema, type TeamWords } from './team-words.ts';
import { timesSchema, type TimeWords } from './time-words.ts';
import { unitsSchema, type UnitWords, unitWords } from './units.ts';

const words = z.array(z.string());

const lexiconSchema = z.strictObject({
  fillers: words,
  articles: words,
  softeners: words,
  amountWords: words,
  heardFor: words,
  grades: words,
  joints: words,
  chatter: words,
  abbreviations: words,
  counters: words,
  keywords: words,
  neverNames: words,
  alone: z.record(z.string(), z.string()),
  rules: z.record(z.string(), z.string()),
});

const namesSchema = z.strictObject({
  items: z.record(z.string(), words),
  parts: z.record(z.string(), words),
  containers: z.record(z.string(), words),
});

export interface Language {
  readonly code: string;
  readonly decimalMark: '.' | ',';
  readonly start: State<Meaning>;
  /** Words that stand in some sentence, and those of them that are worth correcting when misspelt. */
  readonly words: ReadonlySet<string>;
  readonly keywords: readonly string[];
  readonly numbers: NumberWords;
  readonly units: UnitWords;
  /** Phrases that say nothing, by their first word, the longest first. */
  readonly fillers: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** Articles, of the words that say nothing. */
  readonly articles: ReadonlySet<string>;
  /** Words that make a number vague: an entry with one is asked about. */
  readonly softeners: ReadonlySet<string>;
  /** Words that stand beside amounts and say what they are for. */
  readonly amountWords: ReadonlySet<string>;
  /** Words that a recogniser writes for a name that they are not close to. */
  readonly heardFor: ReadonlySet<string>;
  /** What meat is graded and sold as ("choice ribeye"): a ribeye like any other, unless the kitchen has that name itself. */
  readonly grades: ReadonlySet<string>;
  /** Words between two entries. */
  readonly joints: ReadonlySet<string>;
  /** Words that show that people talk with each other. */
  readonly chatter: ReadonlySet<string>;
  readonly counters: ReadonlySet<string>;
  /** Units that are written with a full stop behind them. */
  readonly abbreviations: ReadonlySet<string>;
  readonly neverNames: ReadonlySet<string>;
  readonly lookalikes: ReadonlySet<string>;
  readonly names: Readonly<Record<NameKind, NameIndex>>;
  readonly foods: FoodWords;
  readonly catalogue: Catalogue;
  readonly team: TeamWords;
  readonly times: TimeWords;
  /** What a line of nothing but words that say nothing may mean all the same ("ok"): the intent. */
  readonly alone: Readonly<Record<string, string>>;
  /** The wording of replies, as it stands in replies.ftl. */
  readonly replies: string;
}

/** Slots that are read by tables of names or as free words; the others hold numbers. */
export const TEXT_SLOTS = [
  'item',
  'anyItem',
  'likeItem',
  'part',
  'anyPart',
  'likePart',
  'container',
  'anyContainer',
  'supplier',
  'vendor',
  'seller',
  'text',
  'freeFood',
  'code',
  'moment',
  'dayTime',
  'day',
  'zone',
] as const;
export const NUMBER_SLOTS = [
  'weight', 'unitWeight', 'saidWeight', 'clearWeight', 'size', 'unitSize', 'price', 'credit', 'sum', 'total', 'count', 'pieces', 'minutes',
  'number', 'list', 'plainList', 'bareCents', 'bare', 'markedPrice', 'perPrice', 'small', 'answer', 'sizeOrTotal', 'unitSizeOrTotal', 'plainSize', 'plural', 'centPrice',
  'degrees', 'markedDegrees', 'hotDegrees', 'wholeMinutes', 'wholeNumber',
] as const; // prettier-ignore

/** Reads the folder of a language. Throws a DataFault that names file and line where something in it is wrong. */
export function loadLanguage(folder: string, code: string, shapes: IntentShapes): Language {
  const home = join(folder, code);
  const lexicon = readData(join(home, 'lexicon.yaml'), lexiconSchema);
  const numberData = readData(join(home, 'numbers.yaml'), numbersSchema);
  const units = unitWords(readData(join(home, 'units.yaml'), unitsSchema));
  const names = readData(join(home, 'names.yaml'), namesSchema);
  const fillers = lexicon.fillers.map((phrase) => phrase.split(' ')).sort((a, b) => b.length - a.length);
  const sentences = compileSentences(sentenceFiles(join(home, 'sentences')), {
    shapes,
    shared: { rules: lexicon.rules, dropped: new Set(fillers.filter((each) => each.length === 1).flat()) },
    slotTypes: new Set<string>([...TEXT_SLOTS, ...NUMBER_SLOTS, ...FOOD_SLOTS]),
  });
  const numbers = numberWords(numberData);
  return {
    code,
    decimalMark: numberData.decimalMark,
    start: sentences.start,
    words: sentences.words,
    keywords: lexicon.keywords,
    numbers,
    units,
    fillers: byFirstWord(fillers),
    articles: new Set(lexicon.articles),
    softeners: new Set(lexicon.softeners),
    amountWords: new Set(lexicon.amountWords),
    heardFor: new Set(lexicon.heardFor),
    grades: new Set(lexicon.grades),
    joints: new Set(lexicon.joints),
    chatter: new Set(lexicon.chatter),
    abbreviations: new Set(
      [...units.weight.keys(), ...units.minute, ...units.hour, ...lexicon.abbreviations].filter(
        (word) => word.length <= 4,
      ),
    ),
    counters: new Set([...lexicon.counters, ...units.weight.keys()]),
    neverNames: new Set([...lexicon.neverNames, ...lexicon.chatter, ...lexicon.counters]),
    lookalikes: new Set(readData(join(home, 'lookalikes.yaml'), words)),
    names: {
      item: nameIndex(new Map(Object.entries(names.items))),
      part: nameIndex(new Map(Object.entries(names.parts))),
      container: nameIndex(new Map(Object.entries(names.containers))),
    },
    foods: readData(join(home, 'foods.yaml'), foodsSchema),
    catalogue: readData(join(folder, 'catalogue.yaml'), catalogueSchema),
    team: readData(join(home, 'team.yaml'), teamSchema),
    times: readData(join(home, 'times.yaml'), timesSchema),
    alone: lexicon.alone,
    replies: readFileSync(join(home, 'replies.ftl'), 'utf8'),
  };
}

function byFirstWord(phrases: readonly (readonly string[])[]): Language['fillers'] {
  const found = new Map<string, (readonly string[])[]>();
  for (const phrase of phrases) {
    const [first = ''] = phrase;
    found.set(first, [...(found.get(first) ?? []), phrase]);
  }
  return found;
}

function sentenceFiles(folder: string): readonly SentenceFile[] {
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort();
  return files.map((file) => {
    const path = join(folder, file);
    return { intent: file.replace(/\.yaml$/, ''), path, text: readFileSync(path, 'utf8') };
  });
}

export function readData<Schema extends z.ZodType>(path: string, schema: Schema): z.output<Schema> {
  const text = readFileSync(path, 'utf8');
  try {
    return schema.parse(parseYaml(text));
  } catch (error) {
    if (error instanceof z.ZodError)
      throw new DataFault(`${path}:${lineNaming(text, error)}: ${error.issues[0]?.message ?? ''}`, {
        cause: error,
      });
    if (!(error instanceof YAMLException)) throw error;
    throw new DataFault(`${path}:${(error.mark?.line ?? 0) + 1}: ${error.reason}`, { cause: error });
  }
}

/** The line in which the last name of the faulty path stands. */
function lineNaming(text: string, error: z.ZodError): number {
  const key = error.issues[0]?.path.filter((step) => typeof step === 'string').at(-1);
  const line = text.split('\n').findIndex((each) => key !== undefined && each.includes(`${key}:`));
  return line + 1;
}
