// Lists of single weights: "16.2 15.9 16.4", "sixteen fifteen sixteen", "sixteen two fifteen nine". Every item of a list has
// the same form; a list that could be read in two ways, or mixes forms, is in doubt.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { WeightUnit } from '../core/quantity.ts';
import { exactAmounts, withFraction } from './amount.ts';
import { digitAt, type Numbers, small } from './cardinal.ts';
import { COST, follows, type Reading } from './reading.ts';
import { join } from './scale.ts';
import type { Token } from './token.ts';
import type { WeightWords } from './weight.ts';

/** The amounts of a list and the unit said with them, the same for all. */
export interface SpokenList {
  readonly amounts: readonly Decimal[];
  readonly unit?: WeightUnit;
}

interface Item {
  readonly value: Decimal;
  readonly end: number;
}
type ItemReader = (at: number) => Item | undefined;

interface Run {
  readonly words: WeightWords;
  readonly tokens: readonly Token[];
  readonly at: number;
}

/** The list that begins at a place, as long as it goes; at least two items. */
export function lists(
  words: WeightWords,
  tokens: readonly Token[],
  at: number,
): readonly Reading<SpokenList>[] {
  const run: Run = { words, tokens, at };
  const forms = tokens[at]?.kind === 'figure' ? [typed(run)] : [whole(run), pointed(run), scaled(run)];
  const halves = readItems(run, broken(run)).filter(({ value }) =>
    value.amounts.some((each) => !each.isInteger()),
  );
  const read = [...forms.flatMap((form) => readItems(run, form)), ...halves];
  const end = Math.max(0, ...read.map((each) => each.end), spokenEnd(run));
  const fitting = read.filter((each) => each.end === end);
  const [only, other] = fitting;
  if (only !== undefined && other === undefined) return [only];
  return end < at + 2 ? [] : [{ value: { amounts: [] }, end, cost: COST.doubt, doubt: 'list' }];
}

/** All items of one form, with commas, "and" and units between them. */
function readItems({ words, tokens, at }: Run, form: ItemReader): readonly Reading<SpokenList>[] {
  const amounts: Decimal[] = [];
  const units = new Set<WeightUnit>();
  let [place, end] = [at, at];
  for (
    let item = form(place);
    item !== undefined && (place === at || tokens[place]?.before !== 'stop');
    item = form(place)
  ) {
    amounts.push(item.value);
    const unit = words.units.weight.get(follows(tokens, item.end)?.text ?? '');
    if (unit !== undefined) units.add(unit);
    end = unit === undefined ? item.end : item.end + 1;
    const joint = tokens[end]?.text ?? '';
    place = words.numbers.words.and.has(joint) || joint === '/' ? end + 1 : end;
  }
  if (amounts.length < 2) return [];
  const [unit, other] = [...units];
  if (other !== undefined) return [{ value: { amounts: [] }, end, cost: COST.doubt, doubt: 'list' }];
  return [{ value: { amounts, unit }, end, cost: 0 }];
}

/** Where the run of number words, units and "and" ends: what a list must cover. */
function spokenEnd({ words, tokens, at }: Run): number {
  if (tokens[at]?.kind !== 'word') return 0;
  let end = at;
  while (isSpoken(words, tokens, end) && (end === at || tokens[end]?.before !== 'stop')) end += 1;
  while (end > at && words.numbers.words.and.has(tokens[end - 1]?.text ?? '')) end -= 1;
  return end;
}

function isSpoken({ numbers, units }: WeightWords, tokens: readonly Token[], at: number): boolean {
  const { single, oh, point, sure, beside, and } = numbers.words;
  const token = tokens[at];
  if (token?.kind !== 'word') return false;
  const { text } = token;
  if (single.has(text) || oh.has(text) || point.has(text) || sure.has(text) || units.weight.has(text))
    return true;
  return and.has(text) || (beside.has(text) && point.has(tokens[at - 1]?.text ?? ''));
}

function typed({ words, tokens }: Run): ItemReader {
  return (at) => {
    const token = tokens[at];
    if (token?.kind !== 'figure' || token.garbled) return undefined;
    const readings = exactAmounts(words.numbers, tokens, at);
    return readings.reduce((best, each) => (each.end > best.end ? each : best), {
      value: decimal(token.text),
      end: at + 1,
    });
  };
}

/** "sixteen", "eight", "twenty one". A digit behind a teen or tens is no item of its own. */
function whole({ words: { numbers }, tokens }: Run): ItemReader {
  return (at) => {
    const [first] = small(numbers, tokens, at);
    if (first === undefined) return undefined;
    const trailing = first.form !== 'digit' && digitAt(numbers, follows(tokens, first.end)) !== undefined;
    return trailing || isPoint(numbers, tokens, first.end)
      ? undefined
      : { value: decimal(String(first.value)), end: first.end };
  };
}

const isPoint = (numbers: Numbers, tokens: readonly Token[], at: number): boolean =>
  numbers.words.point.has(follows(tokens, at)?.text ?? '');

/** "sixteen point two", "sixteen point two five". */
function pointed({ words: { numbers }, tokens }: Run): ItemReader {
  return (at) => {
    const lead = small(numbers, tokens, at).find((each) => isPoint(numbers, tokens, each.end));
    const digit = lead && digitAt(numbers, follows(tokens, lead.end + 1));
    if (lead === undefined || digit === undefined) return undefined;
    const second = digitAt(numbers, follows(tokens, lead.end + 2));
    const startsItem = small(numbers, tokens, lead.end + 2).some((next) =>
      isPoint(numbers, tokens, next.end),
    );
    if (second === undefined || startsItem)
      return { value: join(lead.value, String(digit.value)), end: lead.end + 2 };
    return { value: join(lead.value, `${String(digit.value)}${String(second.value)}`), end: lead.end + 3 };
  };
}

/** "sixteen and a half", with whole ones beside it. */
function broken(run: Run): ItemReader {
  const { words, tokens } = run;
  const plain = whole(run);
  return (at) => {
    const [item] = small(words.numbers, tokens, at).flatMap((lead) =>
      withFraction(words.numbers, tokens, lead),
    );
    return item ?? plain(at);
  };
}

/** "sixteen two", "twenty oh": a teen or tens and its decimal. */
function scaled({ words: { numbers }, tokens }: Run): ItemReader {
  return (at) => {
    for (const lead of small(numbers, tokens, at)) {
      const digit = digitAt(numbers, follows(tokens, lead.end));
      if (digit !== undefined && lead.value >= 10)
        return { value: join(lead.value, String(digit.value)), end: lead.end + 1 };
    }
    return undefined;
  };
}
