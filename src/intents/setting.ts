// "cutters may see costs": what the kitchen sets by word, by those who run it.
import type { EntryOf } from '../core/entry.ts';
import { recallChoice } from '../core/memory.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { clock, type Reply, say } from '../core/reply.ts';
import { mayChangeSettings } from '../core/role.ts';
import { isSetting, type SettingName } from '../core/setting.ts';
import { answered, type Intent, recorded, refused } from './intent.ts';

export const setting: Intent<'setting'> = {
  slots: ['setting', 'value'],
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
  say(`setting-${which}`, { value, time: /^\d\d:\d\d$/.test(value) ? clock(`2000-01-01T${value}`, 'daily') : '' });

/** After a setting was taken back: what holds again. */
export function settingNow({ memory }: Kitchen, which: SettingName): Reply {
  const value = recallChoice(memory, which);
  return value === undefined ? say('setting-as-made') : settingWords(which, value);
}
