// How many: whole numbers and dozens; a part of one is asked about.
import { exactAmounts } from './amount.ts';
import { wholes } from './cardinal.ts';
import { COST, follows, type Reading } from './reading.ts';
import { impossible, type SlotContext, type SlotReader, type SlotReading } from './slot.ts';
import type { Token } from './token.ts';

export function countReader(context: SlotContext, most: number): SlotReader {
  const { numbers } = context;
  return (tokens, at) => {
    const said = [...wholes(numbers, tokens, at), ...dozens(context, tokens, at)];
    const read = said.map((each): SlotReading =>
      impossible({ ...each }, each.value >= 1 && each.value <= most),
    );
    const token = tokens[at];
    const spoken =
      token?.kind === 'word'
        ? exactAmounts(numbers, tokens, at).filter((each) => !each.value.isInteger())
        : [];
    const parts = spoken.map((each): SlotReading => ({
      value: 0,
      end: each.end,
      cost: COST.doubt,
      doubt: 'impossible',
    }));
    const broken = token?.kind === 'figure' && (token.garbled || token.text.includes('.'));
    return broken ? [{ value: 0, end: at + 1, cost: COST.doubt, doubt: 'impossible' }] : [...read, ...parts];
  };
}

/** "a dozen", "two dozen", "half a dozen". */
function dozens({ numbers }: SlotContext, tokens: readonly Token[], at: number): readonly Reading<number>[] {
  const { one, dozen, fractions } = numbers.words;
  const first = tokens[at]?.text ?? '';
  const leads: { value: number; end: number }[] = wholes(numbers, tokens, at).map(({ value, end }) => ({
    value,
    end,
  }));
  if (one.has(first)) leads.push({ value: 1, end: at + 1 });
  const half = fractions.get(first);
  if (half?.eq('0.5') === true)
    leads.push({ value: 0.5, end: one.has(follows(tokens, at + 1)?.text ?? '') ? at + 2 : at + 1 });
  return leads.flatMap(({ value, end }) => {
    const many = dozen.get(follows(tokens, end)?.text ?? '');
    return many === undefined ? [] : [{ value: value * many, end: end + 1, cost: 0 }];
  });
}
