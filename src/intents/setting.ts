// "cutters may see costs": what the kitchen sets by word, by those who run it.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { GROUND_CODE_F, mayBeGroundLimit } from '../core/heat.ts';
import { recallChoice } from '../core/memory.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { clock, type Reply, type ReplyValue, say, size, temperature } from '../core/reply.ts';
import { mayChangeSettings } from '../core/role.ts';
import { isSetting, type SettingName } from '../core/setting.ts';
import { answered, type Intent, recorded, refused } from './intent.ts';

export const setting: Intent<'setting'> = {
  slots: ['setting', 'value', 'degrees', 'each'],
  settle: (entry) => {
    const amount = entry.degrees ?? entry.each;
    return amount === undefined ? entry : { ...entry, value: amount.toString() };
  },
  decide: ({ kitchen, role }, { setting: which, value, degrees }: EntryOf<'setting'>) => {
    if (!mayChangeSettings(role)) return refused(say('settings-not-yours'));
    if (degrees !== undefined && !mayBeGroundLimit(degrees)) return refused(...badLimit(degrees));
    if (!isSetting(which, value)) return refused(say('setting-unread'));
    const words = settingWords(which, value);
    if (recallChoice(kitchen.memory, which) === value) return answered(words);
    return recorded([{ fact: { type: 'chosen', setting: which, value } }], () => ({ say: [words] }));
  },
};

/** What holds from now on, in words. */
export const settingWords = (which: SettingName, value: string): Reply =>
  say(`setting-${which}`, { value: settingValue(which, value), time: /^\d\d:\d\d$/.test(value) ? clock(`2000-01-01T${value}`, 'daily') : '' });

function settingValue(which: SettingName, value: string): ReplyValue {
  if (which === 'groundCookF') return temperature(decimal(value));
  return which === 'portionTolerance' ? size(decimal(value)) : value;
}

/** A limit below what is published is nobody's to set. */
const badLimit = (degrees: Decimal): readonly Reply[] =>
  degrees.lt(GROUND_CODE_F) ? [say('limit-too-low', { code: temperature(GROUND_CODE_F) }), say('check-code')] : [say('setting-unread')];

/** After a setting was taken back: what holds again. */
export function settingNow({ memory }: Kitchen, which: SettingName): Reply {
  const value = recallChoice(memory, which);
  return value === undefined ? say('setting-as-made') : settingWords(which, value);
}
