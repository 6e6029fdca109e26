// The buttons under a card and under a question. Each is a word that could be said as well.
import { randomBytes } from 'node:crypto';
import type { ButtonRow, Meaning } from '../../app/ports/cards.ts';
import type { Touched } from '../../app/ports/table.ts';
import type { Entry } from '../../core/entry.ts';
import { say } from '../../core/reply.ts';
import type { Desk } from './desk.ts';

/** The answers that have a button; the others are said. */
const CHOICES = [
  'yes', 'no', 'add', 'replace', 'newPrice', 'whatIf', 'weight', 'worth', 'anotherPiece', 'each', 'total', 'pound', 'perUnit', 'kilo',
  'count', 'size', 'minutes', 'rate',
] as const; // prettier-ignore

export const labelOf = (desk: Desk, entry: Entry): string => {
  const word = entry.kind === 'choice' ? entry.option : entry.kind;
  return desk.words(say('button', { word }));
};

export interface Keyboard {
  readonly rows: readonly ButtonRow[];
  readonly meanings: readonly Meaning[];
}

type Where = Pick<Meaning, 'chat' | 'kitchen' | 'scope'>;

interface Pressable {
  readonly entry: Entry;
  /** Who alone may press it. */
  readonly person?: number;
}

/** To take back the entry shown is its speaker's; to close is anybody's. */
export function cardKeyboard(
  desk: Desk,
  where: Where,
  { test, person }: { test: Touched; person: number },
): Keyboard {
  const { undoable: target } = test;
  const undo = target === undefined ? [] : [{ entry: { kind: 'undo', target }, person } as const];
  return keyboard(desk, where, [[...undo, { entry: { kind: 'finish', test: test.id } }]]);
}

export const NO_BUTTONS: Keyboard = { rows: [], meanings: [] };

/** To take back one entry, for who said it. */
export const undoKeyboard = (
  desk: Desk,
  where: Where,
  { target, person }: { target: string; person: number },
): Keyboard => keyboard(desk, where, [[{ entry: { kind: 'undo', target }, person }]]);

const PER_ROW = 3;

/** The answers to a question, for whom it was put to. */
export function questionKeyboard(
  desk: Desk,
  where: Where,
  { choices, person }: { choices: readonly string[]; person: number },
): Keyboard {
  const words = choices.includes('yes') && choices.length === 1 ? [...choices, 'no'] : choices;
  const known = words.filter((word) => (CHOICES as readonly string[]).includes(word));
  const pressable = known.map((word) => ({ entry: entryOf(word), person }));
  const rows = pressable.length === 0 ? [] : chunks(pressable);
  return keyboard(desk, where, rows);
}

function entryOf(word: string): Entry {
  return word === 'yes' || word === 'no' ? { kind: word } : { kind: 'choice', option: word };
}

const chunks = (all: readonly Pressable[]): readonly (readonly Pressable[])[] =>
  all.length <= PER_ROW ? [all] : [all.slice(0, PER_ROW), ...chunks(all.slice(PER_ROW))];

function keyboard(desk: Desk, where: Where, wanted: readonly (readonly Pressable[])[]): Keyboard {
  const meanings: Meaning[] = [];
  const rows = wanted.map((row) =>
    row.map(({ entry, person }) => {
      // 22 characters; the service takes 64 bytes.
      const nonce = randomBytes(16).toString('base64url');
      meanings.push({
        ...where,
        nonce,
        ...(person === undefined ? {} : { person }),
        action: { is: 'entry', entry },
      });
      return { label: labelOf(desk, entry), nonce };
    }),
  );
  return { rows, meanings };
}
