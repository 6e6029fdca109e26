// "am I cutting heavy on ribeye": the portions of the last weeks against their size.
import type { EntryOf } from '../core/entry.ts';
import { heaviness, type Heaviness, readPortionRow, WEEKS_LOOKED_AT } from '../core/heavy.ts';
import { decimal, type Decimal } from '../core/decimal.ts';
import { money, name, percent, say, sayCost, size, type Reply } from '../core/reply.ts';
import { line } from './card.ts';
import { answered, type Intent, refused } from './intent.ts';
import { withItem } from './route.ts';

/** The mean may be off by so many percent and still be on weight, as in the result of a test. */
const ON_WEIGHT_PCT = decimal('1');

export const askHeavy: Intent<'askHeavy'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'askHeavy'>) =>
    withItem(scene, entry, (item) => {
      const past = scene.past.filter((test) => test.item === item);
      const rows = past.flatMap(({ closedAt = '', figures = {} }) => readPortionRow(closedAt, figures) ?? []);
      const found = heaviness(rows, scene.at);
      if (found === undefined)
        return refused(say('no-portions-weighed', { item: name(item), weeks: WEEKS_LOOKED_AT }));
      return answered(howHeavy(item, found), line(...behind(found)), ...givenAway(found));
    }),
};

function howHeavy(item: string, { offGrams, offPct }: Heaviness): Reply {
  const args = { item: name(item), off: size(offGrams.abs()), share: percent(offPct.abs()) };
  if (isWithin(offPct)) return say('cutting-on-weight', args);
  return say(offPct.isNegative() ? 'cutting-light' : 'cutting-heavy', args);
}

const isWithin = (offPct: Decimal): boolean => offPct.abs().lte(ON_WEIGHT_PCT);

function behind({ tests, portions, listed, under, over }: Heaviness): readonly Reply[] {
  const counted = say('heavy-behind', { tests, portions, weeks: WEEKS_LOOKED_AT });
  return listed === 0 ? [counted] : [counted, say('heavy-off', { listed, under, over })];
}

function givenAway({ givenAway }: Heaviness): readonly Reply[] {
  if (givenAway === undefined || !givenAway.perTest.gt(0)) return [];
  const { perPortion, perTest, perWeek } = givenAway;
  return [
    sayCost('heavy-gives-away', { portion: money(perPortion), test: money(perTest), week: money(perWeek) }),
  ];
}
