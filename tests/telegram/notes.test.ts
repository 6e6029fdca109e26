// Voice notes in a chat: heard aside, taken like typed words, asked about where the ear is not sure. And files that go with an answer.
import { expect, it } from 'vitest';
import type { HearNote } from '../../src/app/ports/hearing.ts';
import { paperMaker } from '../../src/papers/maker.ts';
import { say } from '../../src/core/reply.ts';
import { newPath, recordedTexts, runBot } from './running.ts';
import { ask, cardIn, lastWords, quiet, service, shownBy, type Talk } from './talk.ts';

interface Heard extends Talk {
  readonly owner: number;
  readonly path: string;
}

/** An ear that takes the bytes of a note for its words; how sure it is stands before them. */
const ear: HearNote = (bytes) => {
  const [sure = '', text = ''] = Buffer.from(bytes).toString().split('|');
  const heard = { confidence: Number(sure) };
  if (text === '') return Promise.resolve({ is: 'nothing', text, heard, reply: say('heard-nothing') });
  return Promise.resolve({ is: 'words', text, heard });
};

async function listening(hear: HearNote = ear): Promise<Heard> {
  const api = await service();
  const path = newPath();
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const bot = await runBot({ service: api, owner, path, ears: new Map([['kitchen', hear]]) });
  return { api, bot, owner, path };
}

const base64 = (text: string): string => Buffer.from(text).toString('base64');
const note = ({ api, owner }: Heard, text: string): unknown =>
  api.sayVoice({ from: owner, duration: 2, base64: base64(text) });

it('records what it surely heard, and shows it', async () => {
  const kitchen = await listening();
  await shownBy(kitchen, kitchen.owner, () => note(kitchen, '0.99|ribeye fourteen point two at seven forty'));
  const card = cardIn(kitchen, kitchen.owner);
  expect(card.text).toContain('ribeye 14.2 lb, $7.40/lb');
  expect(card.text).toContain('ribeye fourteen point two at seven forty');
  expect(recordedTexts(kitchen.path)).toEqual(['ribeye fourteen point two at seven forty']);
});

it('asks about what it half heard, and records it when it is pressed', async () => {
  const kitchen = await listening();
  const { api, owner, path } = kitchen;
  const shown = await shownBy(kitchen, owner, () =>
    note(kitchen, '0.8|ribeye fourteen point two at seven forty'),
  );
  expect(shown.at(-1)?.text).toContain('Heard');
  expect(recordedTexts(path)).toEqual([]);
  api.press({ user: owner, chat: owner, message_id: shown.at(-1)?.message_id ?? 0, text: 'Yes' });
  await quiet(kitchen);
  expect(cardIn(kitchen, owner).text).toContain('ribeye 14.2 lb');
});

it('says of noise that it heard nothing, and records nothing', async () => {
  const kitchen = await listening();
  const shown = await shownBy(kitchen, kitchen.owner, () => note(kitchen, '0.1|'));
  expect(shown).toHaveLength(1);
  expect(recordedTexts(kitchen.path)).toEqual([]);
});

it('keeps the order of its chat, and lets the others go on', async () => {
  let hear = (): void => undefined;
  const heard = new Promise<void>((resolve) => (hear = resolve));
  const kitchen = await listening(async (bytes, speaker) => {
    await heard;
    return ear(bytes, speaker);
  });
  const { api, bot, owner, path } = kitchen;
  const lead = api.addUser({ first_name: 'Tobin' }).id;
  await bot.store.appoint('kitchen', { person: lead, name: 'Tobin', role: 'owner' });
  note(kitchen, '0.99|ribeye fourteen point two at seven forty');
  api.say({ from: owner, text: 'trim 1.1' });
  api.say({ from: lead, text: 'striploin 12 lb' });
  await expect.poll(() => recordedTexts(path)).toEqual(['striploin 12 lb']);
  hear();
  await quiet(kitchen);
  expect(recordedTexts(path)).toEqual([
    'striploin 12 lb',
    'ribeye fourteen point two at seven forty',
    'trim 1.1',
  ]);
});

it('tells that a note can no longer be fetched', async () => {
  const kitchen = await listening();
  const { api, owner } = kitchen;
  api.fail({ method: 'getFile', when: { kind: 'always' }, answer: { kind: 'error', code: 400 } });
  const shown = await shownBy(kitchen, owner, () => note(kitchen, '0.99|ribeye fourteen point two'));
  expect(lastWords(shown)).toContain("can't get at that voice note");
});

it('sends the file of an answer, once', async () => {
  const api = await service();
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const bot = await runBot({ service: api, owner, papers: paperMaker });
  const talk = { api, bot };
  for (const text of ['ribeye 14.2 lb at 7.40', 'portions weigh 11.2', 'done', 'yes'])
    await ask(talk, owner, text);
  await ask(talk, owner, 'export ribeye');
  expect(api.countEffects({ method: 'sendDocument' })).toBe(1);
  await ask(talk, owner, 'picture of the ribeye');
  expect(api.countEffects({ method: 'sendPhoto' })).toBe(1);
});
