// "cutters may see costs": what the kitchen sets by word, by those who run it.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { COLD_F, GROUND_CODE_F, mayBeColdLimit, mayBeGroundLimit } from '../core/heat.ts';
import { recallChoice } from '../core/recall.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { clock, list, name, type Reply, type ReplyValue, say, size, temperature } from '../core/reply.ts';
import { mayChangeSettings } from '../core/role.ts';
import { isSetting, type SettingName } from '../core/setting.ts';
import { answered, type Decision, type Intent, recorded, refused, type Scene } from './intent.ts';

export const setting: Intent<'setting'> = {
  slots: ['setting', 'value', 'degrees', 'each'],
  settle: (entry) => {
    const amount = entry.degrees ?? entry.each;
    return amount === undefined ? entry : { ...entry, value: amount.toString() };
  },
  decide: (scene, { setting: which, value, degrees }: EntryOf<'setting'>) => {
    if (!mayChangeSettings(scene.role)) return refused(say('settings-not-yours'));
    const badLimit = degrees && limitTrouble(which, degrees);
    if (badLimit !== undefined) return refused(...badLimit);
    if (!NAMES_SOMEBODY.has(which) || NOBODY.has(value)) return choose(scene, which, value);
    const named = known(scene).find((each) => each.toLowerCase() === value.toLowerCase());
    return named === undefined ? refused(nobodyCalled(scene, value)) : choose(scene, which, named);
  },
};

function choose({ kitchen }: Scene, which: SettingName, value: string): Decision {
  if (!isSetting(which, value)) return refused(say('setting-unread'));
  const words = settingWords(which, value);
  if (recallChoice(kitchen.memory, which) === value) return answered(words);
  return recorded([{ fact: { type: 'chosen', setting: which, value } }], () => ({ say: [words] }));
}

const NAMES_SOMEBODY: ReadonlySet<SettingName> = new Set(['secondPerson', 'summaryTo']);
const NOBODY: ReadonlySet<string> = new Set(['nobody', 'team']);

/** Those of the team; where nobody told who that is, those who have spoken here. */
const known = ({ people, kitchen, speaker }: Scene): readonly string[] => [
  ...new Set(people?.values() ?? [...kitchen.speakers.keys(), speaker]),
];

/** A summary or an alarm that goes to nobody would be lost. */
const nobodyCalled = (scene: Scene, value: string): Reply =>
  say('nobody-called', {
    name: name(value),
    people: list(known(scene).map((each) => say('line', { of: name(each) }))),
  });

/** What holds from now on, in words. */
export const settingWords = (which: SettingName, value: string): Reply =>
  say(`setting-${which}`, {
    value: settingValue(which, value),
    time: /^\d\d:\d\d$/.test(value) ? clock(`2000-01-01T${value}`, 'daily') : '',
  });

function settingValue(which: SettingName, value: string): ReplyValue {
  if (which === 'groundCookF' || which === 'coldF') return temperature(decimal(value));
  return which === 'portionTolerance' ? size(decimal(value)) : value;
}

/** A limit that asks for less than what is published is nobody's to set. */
function limitTrouble(which: SettingName, degrees: Decimal): readonly Reply[] | undefined {
  if (which === 'coldF') {
    if (mayBeColdLimit(degrees)) return undefined;
    return degrees.gt(COLD_F)
      ? [say('limit-too-warm', { code: temperature(COLD_F) }), say('check-code')]
      : [say('setting-unread')];
  }
  if (mayBeGroundLimit(degrees)) return undefined;
  return degrees.lt(GROUND_CODE_F)
    ? [say('limit-too-low', { code: temperature(GROUND_CODE_F) }), say('check-code')]
    : [say('setting-unread')];
}

/** After a setting was taken back: what holds again. */
export function settingNow({ memory }: Kitchen, which: SettingName): Reply {
  const value = recallChoice(memory, which);
  return value === undefined ? say('setting-as-made') : settingWords(which, value);
}
