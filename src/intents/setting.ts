// "cutters may see costs": what the kitchen sets by word, by those who run it.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { GROUND_CODE_F, mayBeGroundLimit } from '../core/heat.ts';
import { recallChoice } from '../core/memory.ts';
import { type Reply, say, temperature } from '../core/reply.ts';
import { mayChangeSettings } from '../core/role.ts';
import { isSetting, type SettingName } from '../core/setting.ts';
import { answered, type Intent, recorded, refused } from './intent.ts';

export const setting: Intent<'setting'> = {
  slots: ['setting', 'value', 'degrees'],
  settle: (entry) => (entry.degrees === undefined ? entry : { ...entry, value: entry.degrees.toString() }),
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
  say(`setting-${which}`, which === 'groundCookF' ? { value: temperature(decimal(value)) } : { value });

/** A limit below what is published is nobody's to set. */
const badLimit = (degrees: Decimal): readonly Reply[] =>
  degrees.lt(GROUND_CODE_F) ? [say('limit-too-low', { code: temperature(GROUND_CODE_F) }), say('check-code')] : [say('setting-unread')];
