// What there is to grind of a part: weighed in tests that are open or were closed lately, in no lot yet, and not thrown away.
import type { Grams } from '../core/quantity.ts';
import type { Test } from '../core/test.ts';
import type { Scene } from './intent.ts';

export interface Left {
  readonly test: Test;
  readonly grams: Grams;
}

/** Raw trim keeps 1 to 2 days (USDA FSIS, FDA storage chart): older tests have nothing to give. */
const TRIM_KEEPS_MS = 2 * 24 * 60 * 60 * 1000;

export function toGrind({ kitchen, at }: Scene, part: string, item: string | undefined): readonly Left[] {
  const lots = [...kitchen.lots.values()].filter(
    ({ status, part: of }) => status !== 'dropped' && of === part,
  );
  const taken = new Set(lots.flatMap(({ from }) => from.map(({ test }) => test)));
  return [...kitchen.tests.values()]
    .sort((a, b) => a.id - b.id)
    .flatMap((test) => {
      const grams = leftOf(test, part);
      const isFresh =
        test.status === 'open' || Date.parse(at) - Date.parse(test.closedAt ?? test.openedAt) < TRIM_KEEPS_MS;
      if (grams === undefined || !grams.gt(0) || test.status === 'dropped' || !isFresh || taken.has(test.id))
        return [];
      return item !== undefined && test.item !== item ? [] : [{ test, grams }];
    });
}

/** What is there of a part that was weighed, less what was thrown away. */
function leftOf({ parts, binned }: Pick<Test, 'parts' | 'binned'>, part: string): Grams | undefined {
  const weighed = parts.find((each) => each.part === part);
  const gone = binned.filter((each) => each.part === part);
  return weighed && gone.reduce((left, { grams }) => left.minus(grams), weighed.grams);
}
