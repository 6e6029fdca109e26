// The sentences of a language, from its files, into one automaton. Faults name the file and the line.
import {
  type LineCounter,
  isMap,
  isSeq,
  type Node as YamlNode,
  parseDocument,
  LineCounter as Lines,
} from 'yaml';
import { z } from 'zod';
import type { Meaning } from './match.ts';
import {
  addSentence,
  type Draft,
  finish,
  literalWords,
  newDraft,
  type Node,
  parseTemplate,
  type Shared,
  type State,
  TemplateError,
} from './template.ts';

/** A fault in language data, for the person who edits it: "file:line: what is wrong". */
export class DataFault extends Error {}

/** What the language needs to know of an intent: its slots' names. Given from outside, so that no intent is known here. */
export interface IntentShape {
  readonly slots: readonly string[];
}
export type IntentShapes = Readonly<Record<string, IntentShape>>;

const entrySchema = z.strictObject({
  say: z.union([z.string(), z.array(z.string()).min(1)]),
  set: z.record(z.string(), z.union([z.string(), z.boolean(), z.number()])).optional(),
  when: z
    .array(z.enum(['question', 'statement', 'answer', 'reading', 'alone', 'undetermined', 'ends', 'apart']))
    .optional(),
  /** A sentence that must be asked about: the question's code, and what each answer makes of it. */
  ask: z.string().optional(),
  readings: z.record(z.string(), z.string()).optional(),
});
type EntryData = z.infer<typeof entrySchema>;

export interface SentenceFile {
  /** File name without folder and ending: the intent. */
  readonly intent: string;
  readonly path: string;
  readonly text: string;
}

export interface SentenceContext {
  readonly shapes: IntentShapes;
  readonly shared: Shared;
  readonly slotTypes: ReadonlySet<string>;
}

/** The automaton, and every word that stands in a sentence. */
export interface Sentences {
  readonly start: State<Meaning>;
  readonly words: ReadonlySet<string>;
}

/** Compiles all files. Throws a DataFault at the first sentence that is wrong. */
export function compileSentences(files: readonly SentenceFile[], context: SentenceContext): Sentences {
  const building = { draft: newDraft<Meaning>(), words: new Set<string>() };
  for (const file of files) addFile(building, file, context);
  return { start: finish(building.draft), words: building.words };
}

interface Building {
  readonly draft: Draft<Meaning>;
  readonly words: Set<string>;
}

function addFile(building: Building, file: SentenceFile, context: SentenceContext): void {
  const lines = new Lines();
  const document = parseDocument(file.text, { lineCounter: lines });
  const [error] = document.errors;
  if (error !== undefined)
    throw new DataFault(
      `${file.path}:${error.linePos?.[0].line ?? 1}: ${error.message.split('\n')[0] ?? ''}`,
    );
  if (!isSeq(document.contents)) throw new DataFault(`${file.path}:1: a list of sentences is wanted`);
  for (const item of document.contents.items as YamlNode[]) {
    const where = `${file.path}:${lineOf(item, lines)}`;
    const data = entrySchema.safeParse(item.toJS(document));
    if (!data.success) throw new DataFault(`${where}: ${data.error.issues[0]?.message ?? 'not a sentence'}`);
    addEntry(building, file, { data: data.data, context, where: placesOf(item, where, { file, lines }) });
  }
}

const lineOf = (node: YamlNode, lines: LineCounter): number => lines.linePos(node.range?.[0] ?? 0).line;

/** The place of each template of an entry, for messages. */
function placesOf(
  item: YamlNode,
  whole: string,
  at: { file: SentenceFile; lines: LineCounter },
): (index: number) => string {
  const say = isMap(item) ? item.get('say', true) : undefined;
  return (index) => {
    const node = isSeq(say) ? (say.items[index] as YamlNode | undefined) : undefined;
    return node === undefined ? whole : `${at.file.path}:${lineOf(node, at.lines)}`;
  };
}

interface Placed {
  readonly data: EntryData;
  readonly context: SentenceContext;
  readonly where: (index: number) => string;
}

function addEntry(building: Building, file: SentenceFile, { data, context, where }: Placed): void {
  const meaning: Meaning = {
    intent: file.intent,
    set: data.set ?? {},
    when: data.when ?? [],
    ...(data.ask === undefined ? {} : { ask: data.ask, readings: data.readings ?? {} }),
  };
  const allowed = allowedSlots(file.intent, data, context);
  if (typeof allowed === 'string') throw new DataFault(`${where(0)}: ${allowed}`);
  for (const [index, say] of [data.say].flat().entries()) {
    try {
      const nodes = parseTemplate(say, context.shared);
      check(nodes, allowed, context);
      addSentence(building.draft, nodes, meaning);
      for (const word of literalWords(nodes)) building.words.add(word);
    } catch (error) {
      if (error instanceof TemplateError)
        throw new DataFault(`${where(index)}: ${error.message}`, { cause: error });
      throw error;
    }
  }
}

function allowedSlots(
  intent: string,
  data: EntryData,
  { shapes }: SentenceContext,
): ReadonlySet<string> | string {
  const kinds = data.readings === undefined ? [intent] : Object.values(data.readings);
  const unknown = kinds.find((kind) => !Object.hasOwn(shapes, kind));
  if (unknown !== undefined) return `there is no intent "${unknown}"`;
  const slots = new Set(kinds.flatMap((kind) => shapes[kind]?.slots ?? []));
  const wrong = Object.keys(data.set ?? {}).find((name) => !slots.has(name));
  return wrong === undefined ? slots : `"${wrong}" is no slot of ${kinds.join(', ')}`;
}

function check(nodes: readonly Node[], allowed: ReadonlySet<string>, context: SentenceContext): void {
  for (const node of nodes) {
    if (node.is === 'choice') for (const option of node.options) check(option, allowed, context);
    if (node.is !== 'slot') continue;
    if (!allowed.has(node.name)) throw new TemplateError(`{${node.name}} is no slot of this intent`);
    if (!context.slotTypes.has(node.type)) throw new TemplateError(`there is no kind of slot "${node.type}"`);
  }
}
