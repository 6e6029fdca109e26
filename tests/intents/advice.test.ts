// Every sentence of advice on food safety names its source and its figures. What is expected is written from the sources.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import type { Reply } from '../../src/core/reply.ts';
import { say } from '../../src/core/reply.ts';
import { cookSource, coolingSource, holdSource, houseLimit, sourceOf } from '../../src/intents/advice.ts';
import { messageNames, renderer } from '../../src/language/render.ts';

const wording = readFileSync(
  join(new URL('../..', import.meta.url).pathname, 'intents/en/replies.ftl'),
  'utf8',
);
const render = renderer('en', wording);
const inUnit = (unit: 'lb' | 'kg', reply: Reply): string =>
  render([reply], { unit, currency: 'USD', timezone: 'America/Chicago', seesCosts: true });

const advice: readonly (readonly [title: string, reply: Reply, lb: string, kg: string])[] = [
  ['ground', cookSource('ground'), 'Published minimum: 155 °F for 17 s (Food Code 3-401.11), 160 °F (USDA FSIS).', 'Published minimum: 68.3 °C for 17 s (Food Code 3-401.11), 71.1 °C (USDA FSIS).'],
  ['needled', cookSource('needled'), 'Needled or cubed counts as ground: published minimum 155 °F for 17 s (Food Code 3-401.11).', 'Needled or cubed counts as ground: published minimum 68.3 °C for 17 s (Food Code 3-401.11).'],
  ['poultry', cookSource('poultry'), 'Poultry: 165 °F (Food Code 3-401.11 and USDA FSIS).', 'Poultry: 73.9 °C (Food Code 3-401.11 and USDA FSIS).'],
  ['whole cuts', cookSource('whole'), 'Whole steaks, chops, roasts: 145 °F and 3 min rest (USDA FSIS), 145 °F for 15 s (Food Code 3-401.11).', 'Whole steaks, chops, roasts: 62.8 °C and 3 min rest (USDA FSIS), 62.8 °C for 15 s (Food Code 3-401.11).'],
  ['house limit', houseLimit({}), '165 °F here (common practice for trim ground in house).', '73.9 °C here (common practice for trim ground in house).'],
  ['own limit', houseLimit({ groundCookF: decimal('160') }), "160 °F here (this kitchen's own setting).", "71.1 °C here (this kitchen's own setting)."],
  ['raw', sourceOf('raw', 'trim'), 'Cold holding: 41 °F or below (Food Code 3-501.16).', 'Cold holding: 5 °C or below (Food Code 3-501.16).'],
  ['holding', holdSource(), 'Cold holding 41 °F or below, hot holding 135 °F or above (Food Code 3-501.16).', 'Cold holding 5 °C or below, hot holding 57.2 °C or above (Food Code 3-501.16).'],
  ['cooling', coolingSource(), 'Cooked food: from 135 °F to 70 °F within 2 h, to 41 °F within 6 h in all (Food Code 3-501.14).', 'Cooked food: from 57.2 °C to 21.1 °C within 2 h, to 5 °C within 6 h in all (Food Code 3-501.14).'],
  ['ice point', say('source-ice'), 'Crushed ice and water, 30 s (USDA FSIS).', 'Crushed ice and water, 30 s (USDA FSIS).'],
  ['storage', say('grind-keeps'), 'Raw ground meat keeps 1 to 2 days in the cold (USDA FSIS, FDA storage chart).', 'Raw ground meat keeps 1 to 2 days in the cold (USDA FSIS, FDA storage chart).'],
]; // prettier-ignore

describe('advice', () => {
  it.each(advice)('%s', (_, reply, lb, kg) => {
    expect([inUnit('lb', reply), inUnit('kg', reply)]).toEqual([lb, kg]);
  });

  it('has no source that is not checked here, but where it is a name alone', () => {
    const checked = new Set([...advice.map(([, { id }]) => id), 'source-boiling', 'source-log']);
    expect(messageNames(wording).filter((id) => /^source-/.test(id) && !checked.has(id))).toEqual([]);
  });

  it('never puts the seven days of ready-to-eat food on raw meat', () => {
    expect(wording).not.toMatch(/\b(7|seven)[- ]days?\b/i);
  });
});
