// From what was said to entries, or to the question that a careful listener asks. Only the words are judged here; the
// scene is judged by the intents.
import type { BareNumber, Entry, Kind } from '../core/entry.ts';
import type { Decimal } from '../core/decimal.ts';
import { perLbFrom, perUnit } from '../core/money.ts';
import type { KitchenUnit } from '../core/quantity.ts';
import { name, say } from '../core/reply.ts';
import type { Asked } from '../intents/intent.ts';
import type { Wanted } from '../core/question.ts';
import { settle } from '../intents/index.ts';
import { byUnit } from '../intents/loose-price.ts';
import { looseAsk } from '../intents/loose-weights.ts';
import type { Language } from '../language/language.ts';
import type { Clock } from '../language/moment.ts';
import type { Heard, Said } from '../language/parse.ts';
import { withCountApart } from './counted-list.ts';
import { timed } from './timed.ts';

/** One thing that was said: an entry, or what has to be asked about it. */
export type Understood = { readonly entry: Entry } | { readonly ask: Asked };

/** What the kitchen counts in, and the clock and language by which words of time are read. */
export interface Hearing {
  readonly unit: KitchenUnit;
  readonly clock: Clock;
  readonly language: Language;
  /** What the question lacks that the speaker is asked. */
  readonly wants?: Wanted;
}

/** What a line says, in the order said; words beside an entry that nothing reads make a question of their own. */
export function understand(heard: Heard, by: Hearing): readonly Understood[] {
  const { unit } = by;
  if (heard.tooLong === true) return [{ ask: { asked: say('ask-too-long'), choices: {} } }];
  const said = heard.said
    .flatMap(withCountApart)
    .map((each, at, all) => joinedTo(each, all[at - 1]))
    .flatMap((each, at, all) => timed(each, by) ?? [besideOthers(understandOne(each, unit), all[at - 1])]);
  return heard.unread === undefined
    ? said
    : [...said, { ask: { asked: say('ask-unread', { words: heard.unread }), choices: {} } }];
}

/** "three fourteens and nine sixteens": the nine come to the three. Behind anything else they may be said again. */
function joinedTo(said: Said, before: Said | undefined): Said {
  const { joined, ...slots } = said.slots;
  if (joined !== true) return said;
  return { ...said, slots: before?.kind === 'portions' ? { ...slots, mode: 'add' } : slots };
}

/** A list without a word stands for itself or goes on behind portions; behind anything else it is asked what it is. */
function besideOthers(understood: Understood, before: Said | undefined): Understood {
  if (before === undefined || before.kind === 'portions') return understood;
  const isLoose =
    'entry' in understood && understood.entry.kind === 'portionWeights' && understood.entry.loose;
  return isLoose === true ? { ask: looseAsk(understood.entry) } : understood;
}

function understandOne(said: Said, unit: KitchenUnit): Understood {
  if (said.doubt !== undefined) return { ask: askAbout(said, unit) };
  const entry = settle({ ...plain(said), kind: said.kind } as unknown as Entry);
  if (said.questioned === undefined || !TOLD.has(entry.kind)) return { entry };
  return { ask: { asked: say('ask-to-record', { words: said.questioned }), choices: { yes: entry } } };
}

/** What is told, not asked for: with a question mark ("trim 1.4?") nobody knows whether it is to be put down. */
const TOLD: ReadonlySet<Kind> = new Set<Kind>([
  'receive', 'weigh', 'portions', 'portionWeights', 'readyCut', 'credit', 'labor', 'packing', 'tare', 'temperature', 'finish',
]); // prettier-ignore

/** The slots without those that only say what is not meant. */
function plain({ slots }: Said): Readonly<Record<string, unknown>> {
  const { old: _, ...kept } = slots;
  return kept;
}

function askAbout(said: Said, unit: KitchenUnit): Asked {
  const { doubt, readings } = said;
  const code = doubt?.code ?? '';
  // With a number that is no number there is nothing to choose between.
  if (readings !== undefined && Object.keys(readings).length > 0 && doubt?.slot === undefined)
    return eitherOr(said, readings, unit);
  if (code === 'priceUnit') return perWhichUnit(said, unit);
  const held = { ...plain(said), kind: said.kind };
  const wants = doubt?.slot === undefined ? undefined : { held, slot: doubt.slot };
  return {
    asked: say(`ask-${kebab(code)}`, { words: doubt?.words ?? '', slot: doubt?.slot ?? '' }),
    choices: {},
    wants,
  };
}

/** A sentence with several fair readings: each answer makes its entry of the same slots. */
function eitherOr(said: Said, readings: Readonly<Record<string, string>>, unit: KitchenUnit): Asked {
  const slots = plain(said);
  const made = Object.entries(readings).flatMap(([option, kind]) => {
    const entry = fitted(slots, kind as Kind, option);
    return entry === undefined ? [] : [[option, entry] as const];
  });
  const subject = slots['item'] ?? slots['part'];
  const args = {
    ...(typeof subject === 'string' ? { subject: name(subject) } : {}),
    words: said.doubt?.words ?? '',
  };
  const code = `ask-${kebab(said.doubt?.code ?? '')}`;
  const [only] = made;
  if (made.length === 1 && only !== undefined)
    return {
      asked: say(code, args),
      choices: Object.fromEntries(made),
      wants: { held: only[1], slot: missing(only[1]) },
    };
  const choices = Object.fromEntries(made);
  return { asked: say(code, args), choices: { ...choices, ...byUnit(choices['perUnit'], unit) } };
}

/** The entry of a kind from the slots, a bare number as that kind measures it; undefined where it can't be that. */
function fitted(slots: Readonly<Record<string, unknown>>, kind: Kind, option: string): Entry | undefined {
  const { number, ...rest } = slots;
  const filled = number === undefined ? {} : measured(number as BareNumber, kind, option);
  if (Object.values(filled).some((value) => value === undefined)) return undefined;
  const mode = kind === 'weigh' ? { mode: 'set' } : {};
  return { ...rest, ...filled, ...mode, kind } as unknown as Entry;
}

function measured(number: BareNumber, kind: Kind, option: string): Readonly<Record<string, unknown>> {
  if (kind === 'portions') return option === 'count' ? { count: number.count } : { weight: number.weight };
  if (kind === 'labor') return option === 'minutes' ? { minutes: number.minutes } : { rate: number.money };
  if (option === 'perUnit') return { price: number.price };
  if (option === 'total') return { cost: number.money };
  if (kind === 'receive' || kind === 'weigh') return { weight: number.weight };
  return kind === 'credit' ? { credit: number.price } : { price: number.price };
}

function missing(entry: Entry): string {
  if (entry.kind === 'labor') return 'rate';
  if (entry.kind === 'price') return 'price';
  return entry.kind === 'weigh' && !('part' in entry) ? 'part' : 'weight';
}

/** A price without a unit beside a weight in the other unit: per pound, or per kilo? */
function perWhichUnit(said: Said, unit: KitchenUnit): Asked {
  const slots = plain(said);
  const price = slots['price'] as Decimal;
  const amount = perUnit(price, unit);
  const per = (by: KitchenUnit): Entry =>
    ({ ...slots, kind: said.kind, price: perLbFrom(amount, by) }) as unknown as Entry;
  const choices = { pound: per('lb'), kilo: per('kg') };
  return { asked: say('ask-price-unit'), choices };
}

const kebab = (code: string): string => code.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
