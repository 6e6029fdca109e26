// What is published, with its source: said with every piece of advice, so that nobody takes a house rule for the law.
import type { Decimal } from '../core/decimal.ts';
import {
  COLD_F, GROUND_CODE_F, GROUND_FSIS_F, GROUND_HOUSE_F, HOT_F, POULTRY_F, SEVENTY_F, WHOLE_F,
} from '../core/heat.ts'; // prettier-ignore
import type { Settings } from '../core/kitchen.ts';
import { type Reply, say, temperature } from '../core/reply.ts';
import type { Food, Stage } from '../core/safety-facts.ts';

export const groundLimit = ({ groundCookF }: Pick<Settings, 'groundCookF'>): Decimal =>
  groundCookF ?? GROUND_HOUSE_F;

export const coldLimit = ({ coldF }: Pick<Settings, 'coldF'>): Decimal => coldF ?? COLD_F;

/** Where a limit comes from: set here by word, or what is common practice. */
export const houseLimit = ({ groundCookF }: Pick<Settings, 'groundCookF'>): Reply =>
  say(groundCookF === undefined ? 'limit-practice' : 'limit-set', {
    limit: temperature(groundCookF ?? GROUND_HOUSE_F),
  });

/** The published figures behind the cooking of a food. */
export function cookSource(food: Food | undefined): Reply {
  switch (food) {
    case 'poultry':
      return say('source-poultry', { limit: temperature(POULTRY_F) });
    case 'whole':
      return say('source-whole', { limit: temperature(WHOLE_F) });
    case 'needled':
      return say('source-needled', { code: temperature(GROUND_CODE_F) });
    case 'cooked':
      return holdSource();
    case 'ground':
    case 'trim':
    case 'raw':
    case undefined:
      return say('source-ground', { code: temperature(GROUND_CODE_F), fsis: temperature(GROUND_FSIS_F) });
  }
}

export const holdSource = (): Reply =>
  say('source-hold', { cold: temperature(COLD_F), hot: temperature(HOT_F) });
export const coolingSource = (): Reply =>
  say('source-cooling', {
    hot: temperature(HOT_F),
    seventy: temperature(SEVENTY_F),
    cold: temperature(COLD_F),
  });

export const sourceOf = (stage: Stage, food: Food | undefined): Reply =>
  stage === 'cook'
    ? cookSource(food)
    : stage === 'cooling'
      ? coolingSource()
      : stage === 'raw'
        ? say('source-cold', { cold: temperature(COLD_F) })
        : holdSource();
