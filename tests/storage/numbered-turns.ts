// Turns that tell by themselves whether they are stored whole: number n has two facts, a test row and a question
// that all say n.
import assert from 'node:assert/strict';
import type { Store, Turn } from '../../src/app/ports/store.ts';
import { wholeLog } from '../app/ports/store/whole-log.ts';
import { AT, NO_VIEWS, QUESTION, RECEIVED, recorded, TRIM, turn } from '../app/ports/store/samples.ts';

export function numberedTurn(number: number): Turn {
  const where = { entry: `e${number}`, test: number, item: 'ribeye' };
  return turn(`m${number}`, {
    reply: `r${number}`,
    facts: [recorded(RECEIVED, where), recorded(TRIM, where)],
    views: {
      ...NO_VIEWS,
      tests: [{ id: number, item: 'ribeye', status: 'closed', openedAt: AT, closedAt: AT }],
    },
    question: { ...QUESTION, repeats: number },
  });
}

/** How many turns are stored: each from 1 on whole, once and in order, and nothing else. */
export async function wholeTurns(store: Store): Promise<number> {
  const log = await wholeLog(store, 'home');
  const count = log.length / 2;
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  assert.deepEqual(
    log.map(({ entry, fact }) => `${entry} ${fact.type}`),
    numbers.flatMap((number) => [`e${number} received`, `e${number} weighed`]),
  );
  assert.deepEqual(
    (await store.views('home')).tests.map(({ id }) => id),
    numbers,
  );
  const questions = (await store.load('home'))?.questions ?? [];
  assert.deepEqual(
    questions.map(([, { repeats }]) => repeats),
    count === 0 ? [] : [count],
  );
  assert.equal(await store.replyTo('home', `m${count}`), count === 0 ? undefined : `r${count}`);
  assert.equal(await store.replyTo('home', `m${count + 1}`), undefined);
  return count;
}
