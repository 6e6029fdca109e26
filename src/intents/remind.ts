// "remind me at 3 to check the grind": set, listed and cancelled by word.
import type { EntryOf } from '../core/entry.ts';
import type { FactOf } from '../core/facts.ts';
import { freeNumber, type Reminder, reminders, type Wish } from '../core/reminder.ts';
import { clock, list, name, type Reply, say } from '../core/reply.ts';
import { answered, asks, type Decision, type Intent, recorded, refused, type Scene } from './intent.ts';

export const remind: Intent<'remind'> = {
  slots: ['when', 'text', 'repeat', 'team'],
  decide: (scene, entry: EntryOf<'remind'>) => {
    const { when, instant, text, repeat, team } = entry;
    const same = mine(scene).find((each) => isSame(each, entry));
    if (same !== undefined) return answered(say('already', { of: list([reminderWords(same)]) }));
    const number = freeNumber(scene.kitchen, scene.at);
    const fact = {
      type: 'reminderSet',
      ...{ number, when },
      ...(instant === undefined ? {} : { instant }),
      ...(text === undefined ? {} : { text }),
      ...(repeat === undefined ? {} : { repeat }),
      ...(team === true ? { team } : {}),
    } as const;
    return recorded([{ fact }], () => ({ say: [reminderWords(fact)] }));
  },
};

const isSame = (reminder: Reminder, { when, text, repeat, team }: EntryOf<'remind'>): boolean =>
  reminder.when === when &&
  reminder.text === text &&
  reminder.repeat === repeat &&
  (reminder.to === undefined) === (team === true);

/** One's own and those for the team. */
const mine = ({ kitchen, speaker }: Scene): readonly Reminder[] =>
  reminders(kitchen).filter(({ to }) => to === undefined || to === speaker);

/** When and what, as it is read back. */
export function reminderWords({ when, text, repeat }: Pick<FactOf<'reminderSet'>, keyof Wish>): Reply {
  const args = { when: clock(when, repeat), repeat: repeat ?? 'once' };
  return text === undefined
    ? say('reminder-set-plain', args)
    : say('reminder-set', { ...args, text: name(text) });
}

export const moment: Intent<'moment'> = { slots: ['when'], decide: () => ({ is: 'ignored' }) };

export const askReminders: Intent<'askReminders'> = {
  slots: [],
  decide: (scene) => {
    const all = mine(scene);
    if (all.length === 0) return answered(say('no-reminders'));
    return answered(...all.map(listed));
  },
};

const listed = (reminder: Reminder): Reply =>
  say('reminder-listed', { number: reminder.number, of: list([reminderWords(reminder)]) });

export const cancelReminder: Intent<'cancelReminder'> = {
  slots: ['count', 'text', 'all'],
  decide: (scene, entry: EntryOf<'cancelReminder'>) => {
    const all = mine(scene);
    if (all.length === 0) return refused(say('no-reminders'));
    const meant =
      entry.all === true
        ? all.filter(({ to }) => to !== undefined)
        : all.filter((each) => isMeant(each, entry));
    if (meant.length === 0) return refused(say('no-such-reminder'), ...all.map(listed));
    if (meant.length > 1 && entry.all !== true) return whichOne(meant);
    const facts = meant.map(({ number }) => ({ fact: { type: 'reminderCancelled', number } as const }));
    return recorded(facts, () => ({
      say: meant.map((each) => say('reminder-cancelled', { of: list([reminderWords(each)]) })),
    }));
  },
};

const whichOne = (meant: readonly Reminder[]): Decision =>
  asks(say('ask-which-reminder', { reminders: list(meant.map(listed), 'line') }));

/** Every word that was said stands in it; with no words, any. */
function isMeant({ number, text = '' }: Reminder, { count, text: said }: EntryOf<'cancelReminder'>): boolean {
  if (count !== undefined) return number === count;
  const words = text.toLowerCase().split(/\s+/);
  return (said ?? '')
    .toLowerCase()
    .split(/\s+/)
    .every((word) => word === '' || words.includes(word));
}
