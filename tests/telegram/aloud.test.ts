// Answers that are read out: to whom, when, and that a voice that fails or breaks off costs no text.
import { expect, it } from 'vitest';
import type { HearNote } from '../../src/app/ports/hearing.ts';
import type { SpeakNote } from '../../src/app/ports/speech.ts';
import { say } from '../../src/core/reply.ts';
import { newPath, type Running, runBot, words } from './running.ts';
import { ask, quiet, service, shownBy, type Talk } from './talk.ts';

/** What is sure, in the words that the bytes are. */
const ear: HearNote = (bytes) => {
  const text = Buffer.from(bytes).toString();
  const heard = { confidence: 0.99 };
  if (text === 'noise')
    return Promise.resolve({ is: 'nothing', text: '', heard, reply: say('heard-nothing') });
  return Promise.resolve({ is: 'words', text, heard });
};

/** A voice whose sound is the words. */
const voice: SpeakNote = (text) => Promise.resolve(Buffer.from(text));

interface Spoken extends Talk {
  readonly owner: number;
  readonly path: string;
  readonly bot: Running;
}

async function speaking(speak: SpeakNote = voice): Promise<Spoken> {
  const api = await service();
  const path = newPath();
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const bot = await runBot({ service: api, owner, path, speak, ears: new Map([['kitchen', ear]]) });
  return { api, bot, owner, path };
}

const note = ({ api, owner }: Spoken, text: string, chat = owner): unknown =>
  api.sayVoice({ from: owner, chat, duration: 2, base64: Buffer.from(text).toString('base64') });

/** What arrived as sound by an act, in words. */
async function soundsBy(spoken: Spoken, act: () => unknown): Promise<readonly string[]> {
  const { api } = spoken;
  const before = api.countEffects({ method: 'sendVoice' });
  act();
  await quiet(spoken);
  const sent = api.seenFromBot(spoken.owner).filter(({ message }) => message.voice !== undefined);
  const bytes = await Promise.all(
    sent.slice(before).map(({ message }) => bytesOf(spoken, message.voice?.file_id ?? '')),
  );
  return bytes;
}

async function bytesOf({ api }: Spoken, file: string): Promise<string> {
  const at = `${api.url}/bot${api.token}/getFile?file_id=${file}`;
  const { result } = (await (await fetch(at)).json()) as { result: { file_path: string } };
  return (await fetch(`${api.url}/file/bot${api.token}/${result.file_path}`)).text();
}

const typed = (spoken: Spoken, text: string) =>
  soundsBy(spoken, () => spoken.api.say({ from: spoken.owner, text }));
const said = (spoken: Spoken, text: string) => soundsBy(spoken, () => note(spoken, text));

it('reads out nothing unless somebody wants it', async () => {
  const spoken = await speaking();
  expect(await said(spoken, 'ribeye fourteen point two at seven forty')).toEqual([]);
  expect(await typed(spoken, 'trim 1.1')).toEqual([]);
});

it('reads out what was spoken to, and not what was typed', async () => {
  const spoken = await speaking();
  await ask(spoken, spoken.owner, 'speak when I speak');
  await typed(spoken, 'ribeye 14.2 lb at 7.40');
  expect(await typed(spoken, 'trim 1.1')).toEqual([]);
  expect(await said(spoken, 'fat one point nine')).toEqual(['fat 1.9 lb, 13.4 %, 11.2 lb to go']);
  expect(await said(spoken, 'noise')).toEqual([words(say('heard-nothing'))]);
  expect(await said(spoken, 'good morning')).toEqual([words(say('heard-nothing'))]);
});

it('reads out all, until it is told to stop, and that may be taken back', async () => {
  const spoken = await speaking();
  expect(await typed(spoken, 'speak always')).toEqual([words(say('aloud', { when: 'always' }))]);
  await typed(spoken, 'ribeye 14.2 lb at 7.40');
  expect(await typed(spoken, 'trim 1.1')).toEqual(['trim 1.1 lb, 7.7 %, 13.1 lb to go']);
  expect(await typed(spoken, 'trim 1.3')).toHaveLength(1);
  expect(await typed(spoken, 'stop talking')).toEqual([]);
  expect(await typed(spoken, 'fat 1.9')).toEqual([]);
  await typed(spoken, 'undo');
  expect((await typed(spoken, 'undo'))[0]).toContain('read out to you again');
});

it('reads back the state to who asks for it, whatever they chose', async () => {
  const spoken = await speaking();
  await typed(spoken, 'ribeye 14.2 lb at 7.40');
  await typed(spoken, 'trim 1.1');
  const [read = ''] = await typed(spoken, 'read that back');
  expect(read).toContain('ribeye 14.2 lb');
  expect(read).toContain('trim 1.1 lb');
  await typed(spoken, '12 portions 16 oz');
  await typed(spoken, 'done');
  await typed(spoken, 'yes');
  expect((await said(spoken, 'say that again'))[0]).toContain('trim 1.1 lb');
});

it('is each person’s own choice', async () => {
  const spoken = await speaking();
  const { api, bot } = spoken;
  const lead = api.addUser({ first_name: 'Tobin' }).id;
  await bot.store.appoint('kitchen', { person: lead, name: 'Tobin', role: 'owner' });
  await typed(spoken, 'speak always');
  api.say({ from: lead, text: 'striploin 12 lb' });
  await quiet(spoken);
  expect(api.seenFromBot(lead).filter(({ message }) => message.voice !== undefined)).toEqual([]);
});

it('is silent in a group', async () => {
  const spoken = await speaking();
  const { api, owner } = spoken;
  await typed(spoken, 'speak always');
  const { id: group } = api.addGroup({ title: 'The block', owner, members: [] });
  api.addBot({ chat: group, by: owner, as: 'administrator' });
  await shownBy(spoken, group, () => note(spoken, 'ribeye fourteen point two at seven forty', group));
  expect(api.seenFromBot(group).filter(({ message }) => message.voice !== undefined)).toEqual([]);
});

it('keeps the text where the voice fails', async () => {
  const spoken = await speaking(() => Promise.reject(new Error('no voice')));
  expect(await ask(spoken, spoken.owner, 'speak always')).toBe(words(say('aloud', { when: 'always' })));
  expect(spoken.api.calls({ method: 'sendVoice' })).toEqual([]);
});

it('tells nobody of a person who takes no voice notes, and goes on writing to them', async () => {
  const spoken = await speaking();
  const { api, owner } = spoken;
  const answer = { kind: 'error', code: 400, description: 'Bad Request: VOICE_MESSAGES_FORBIDDEN' } as const;
  api.fail({ method: 'sendVoice', when: { kind: 'always' }, answer });
  await ask(spoken, owner, 'speak always');
  expect(await ask(spoken, owner, 'ribeye 14.2 lb at 7.40')).toContain('ribeye 14.2 lb');
  expect(api.seenFromBot(owner).some(({ text }) => text.includes("can't write to"))).toBe(false);
});

it('sends no sound twice that may have arrived, and offers it', async () => {
  const spoken = await speaking();
  const { api, owner } = spoken;
  await ask(spoken, owner, 'ribeye 14.2 lb at 7.40');
  api.fail({
    method: 'sendVoice',
    when: { kind: 'first', count: 1 },
    answer: { kind: 'drop' },
    effect: true,
  });
  await ask(spoken, owner, 'read that back');
  expect(api.countEffects({ method: 'sendVoice' })).toBe(1);
  expect(await ask(spoken, owner, 'trim 1.1')).toContain('trim 1.1 lb');
  expect(api.countEffects({ method: 'sendVoice' })).toBe(1);
});
