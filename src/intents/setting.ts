// "cutters may see costs": what the kitchen sets by word, by those who run it.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { recallChoice } from '../core/memory.ts';
import { type Reply, say, size } from '../core/reply.ts';
import { mayChangeSettings } from '../core/role.ts';
import { isSetting, type SettingName } from '../core/setting.ts';
import { answered, type Intent, recorded, refused } from './intent.ts';

export const setting: Intent<'setting'> = {
  slots: ['setting', 'value', 'each'],
  settle: (entry) => (entry.each === undefined ? entry : { ...entry, value: entry.each.toString() }),
  decide: ({ kitchen, role }, { setting: which, value }: EntryOf<'setting'>) => {
    if (!mayChangeSettings(role)) return refused(say('settings-not-yours'));
    if (!isSetting(which, value)) return refused(say('setting-unread'));
    const words = settingWords(which, value);
    if (recallChoice(kitchen.memory, which) === value) return answered(words);
    return recorded([{ fact: { type: 'chosen', setting: which, value } }], () => ({ say: [words] }));
  },
};

/** What holds from now on, in words. */
export const settingWords = (which: SettingName, value: string): Reply =>
  say(`setting-${which}`, { value: which === 'portionTolerance' ? size(decimal(value)) : value });
