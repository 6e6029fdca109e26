// What is posted with an answer: the cards of the tests that changed, in each chat that has one; a sign under the entry; a
// question with its buttons; what was asked for or is worth a message of its own.
import type { Delivery, NewLetter } from '../../app/ports/mailbox.ts';
import { name, say } from '../../core/reply.ts';
import { type Answered, isQuiet, NOTHING, type Posted } from './answered.ts';
import { traceOf } from './calls.ts';
import { cards } from './cards.ts';
import { done, letters } from './desk.ts';
import { type Keyboard, NO_BUTTONS, questionKeyboard, undoKeyboard } from './keyboard.ts';

/** One of the few signs that the service has for it. */
const NOTED = '✍';

export async function compose(answered: Answered): Promise<Delivery> {
  const { desk, update } = answered;
  const parts = [
    acknowledgement(answered),
    question(answered),
    message(answered),
    await files(answered),
    ...(await cards(answered)),
    voice(answered),
  ];
  const change = {
    void: [...spent(answered), ...parts.flatMap((part) => part.void)],
    add: parts.flatMap(({ meanings }) => meanings),
  };
  return done(
    desk,
    update,
    parts.flatMap((part) => part.letters),
    { buttons: change },
  );
}

const questionScope = (person: number): string => `question:${person}`;

/** A press uses up all buttons beside it; another question, or none, those of the one before. */
function spent({ incoming: { chat, person }, answer, scope }: Answered): Posted['void'] {
  return [
    ...(scope === undefined ? [] : [{ chat, scope }]),
    ...(answer.asksOther ? [{ chat, scope: questionScope(person) }] : []),
  ];
}

const LONGEST_TOAST = 190;

function acknowledgement(answered: Answered): Posted {
  const { incoming, answer, scope, desk } = answered;
  const { chat } = incoming;
  if (incoming.is === 'press') {
    const { press } = incoming;
    const text =
      answer.outcome === 'ignored' ? desk.words(say('press-stale')) : isQuiet(answered) ? answer.reply : '';
    const toast = {
      chat,
      kind: 'toast',
      press,
      text: Array.from(text).slice(0, LONGEST_TOAST).join(''),
    } as const;
    const isOfQuestion = scope?.startsWith('question:') === true && incoming.message !== undefined;
    const bare = isOfQuestion ? [{ chat, kind: 'bare', text: '', about: incoming.message } as const] : [];
    return { ...NOTHING, letters: [toast, ...bare] };
  }
  // What was heard is always shown: the card says it, and the sign stands under the note.
  if (!isQuiet(answered)) return NOTHING;
  return { ...NOTHING, letters: [{ chat, kind: 'reaction', text: NOTED, about: incoming.message }] };
}

function question({ desk, incoming, member, answer }: Answered): Posted {
  if (answer.outcome !== 'asked') return NOTHING;
  const { chat, person } = incoming;
  const where = { chat, kitchen: member.kitchen, scope: questionScope(person) };
  const { rows, meanings } = questionKeyboard(desk, where, { choices: answer.choices, person });
  const buttons = rows.length === 0 ? {} : { buttons: rows };
  return { ...NOTHING, letters: letters(chat, answer.reply, { ...about(incoming), ...buttons }), meanings };
}

/** In a group it is seen to whom it answers. */
const about = ({ isGroup, message, is }: Answered['incoming']): { about?: number } =>
  isGroup && message !== undefined && is !== 'press' ? { about: message } : {};

function message(answered: Answered): Posted {
  const { desk, incoming, answer } = answered;
  if (answer.outcome === 'asked' || isQuiet(answered)) return NOTHING;
  // The press that came too late is answered by its toast.
  if (answer.outcome === 'ignored' && (incoming.is === 'press' || !incoming.isAddressed)) return NOTHING;
  const text = answer.outcome === 'ignored' ? desk.words(say('not-for-me')) : answer.reply;
  const told = text === '' ? desk.words(say('telegram-noted')) : text;
  const { rows, meanings } = undoOf(answered);
  const buttons = rows.length === 0 ? {} : { buttons: rows };
  return { ...NOTHING, letters: letters(incoming.chat, told, { ...about(incoming), ...buttons }), meanings };
}

/** What was heard and has no card to be taken back from. */
function undoOf({ desk, incoming, member, answer: { outcome, undoable } }: Answered): Keyboard {
  if (incoming.is !== 'voice' || outcome !== 'recorded' || undoable === undefined) return NO_BUTTONS;
  const { chat, message, person } = incoming;
  const where = { chat, kitchen: member.kitchen, scope: `said:${message}` };
  return undoKeyboard(desk, where, { target: undoable, person });
}

/** The answer for the ear, after its text. In a group it would be a noise to everybody. */
function voice({ desk, incoming: { is, chat, isGroup }, answer: { aloud } }: Answered): Posted {
  if (aloud === undefined || isGroup) return NOTHING;
  const text = aloud === '' ? desk.words(say(is === 'voice' ? 'heard-nothing' : 'telegram-noted')) : aloud;
  return { ...NOTHING, letters: [{ chat, kind: 'voice', text }] };
}

/** A file that can't be made is no loss: the answer stands in words. */
async function files({ desk, incoming: { chat }, answer }: Answered): Promise<Posted> {
  const made = await Promise.all(
    (answer.files ?? []).map(async ({ name: file, type, caption, bytes }): Promise<readonly NewLetter[]> => {
      try {
        return [{ chat, kind: 'file', text: caption, file: { name: file, type, bytes: await bytes() } }];
      } catch (error) {
        desk.log.error(traceOf(error), 'file not made');
        return letters(chat, desk.words(say('file-failed', { what: name(file) })));
      }
    }),
  );
  return { ...NOTHING, letters: made.flat() };
}
