// A cook with wet hands: the bot as it is started, OGG files of the voice that comes with the program, and the engine that comes
// with it. What the ear is not sure of is answered as a cook would: by a press, or by saying it in other words.
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, it, onTestFinished } from 'vitest';
import { encodeNote } from '../../src/speech/sound/encode.ts';
import { decodeNote } from '../../src/speech/sound/decode.ts';
import { openSpeaker } from '../../src/open-speech.ts';
import type { Seen } from './bot-api/scenario/view.ts';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { newPath, type Process, recordedTexts, spawnBot } from './running.ts';
import { cardIn } from './talk.ts';

const speak = openSpeaker(new URL('../../intents', import.meta.url).pathname, 'en');
const LONG = { timeout: 300_000 };
const SOON = { timeout: 90_000, interval: 100 };

interface Cook {
  readonly api: BotApi;
  readonly owner: number;
  readonly path: string;
  readonly environment: Readonly<Record<string, string>>;
}

async function cook(): Promise<Cook> {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  const path = newPath();
  const environment = {
    DATABASE_URL: `sqlite:${path}`,
    TELEGRAM_BOT_TOKEN: api.token,
    TELEGRAM_API_ROOT: api.url,
    OWNER_TELEGRAM_ID: String(owner),
    SPEECH_ENGINE: 'embedded',
  };
  return { api, owner, path, environment };
}

const sounds = ({ api }: Cook): number => api.countEffects({ method: 'sendVoice' });

/** Everything that is said is answered aloud, and the sound comes last. */
async function answered(at: Cook, act: () => unknown): Promise<readonly Seen[]> {
  const { api, owner } = at;
  const before = new Map(api.seenFromBot(owner).map((each) => [each.message_id, JSON.stringify(each)]));
  const count = sounds(at);
  act();
  await expect.poll(() => sounds(at), SOON).toBe(count + 1);
  return api.seenFromBot(owner).filter((each) => before.get(each.message_id) !== JSON.stringify(each));
}

const sendNote = ({ api, owner }: Cook, bytes: Uint8Array): unknown =>
  api.sayVoice({ from: owner, duration: 3, base64: Buffer.from(bytes).toString('base64') });

/** Says it; where it was heard otherwise, says it in the next words. */
async function says(at: Cook, ...ways: readonly string[]): Promise<readonly Seen[]> {
  const { api, owner } = at;
  for (const words of ways) {
    const note = await speak(words);
    const shown = await answered(at, () => sendNote(at, note));
    const question = shown.find(({ text }) => /^Heard ".*": right\?$/.test(text));
    if (question === undefined) return shown;
    const isRight = question.text.includes(`"${words.replaceAll(',', '')}"`);
    const press = { user: owner, chat: owner, message_id: question.message_id, text: isRight ? 'Yes' : 'No' };
    const after = await answered(at, () => api.press(press));
    if (isRight) return after;
  }
  throw new Error(`not heard: ${ways[0] ?? ''}`);
}

/** Hiss with bangs, the same every time. */
function kitchenNoise(): Uint8Array {
  let seed = 11;
  const samples = Float32Array.from({ length: 40_000 }, (_, at) => {
    seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
    return (seed / 2 ** 30 - 1) * (at % 9000 < 500 ? 0.8 : 0.05);
  });
  return encodeNote({ samples });
}

/** The sound that came last. */
async function lastSound({ api, owner }: Cook): Promise<Uint8Array> {
  const file = api.seenFromBot(owner).findLast(({ message }) => message.voice !== undefined)?.message.voice;
  const answer = await fetch(`${api.url}/bot${api.token}/getFile?file_id=${file?.file_id ?? ''}`);
  const { result } = (await answer.json()) as { readonly result: { readonly file_path: string } };
  const got = await fetch(`${api.url}/file/bot${api.token}/${result.file_path}`);
  return new Uint8Array(await got.arrayBuffer());
}

/** What is read out of an answer: not what was heard, and not what hears. */
const forTheEar = (text: string): string =>
  text
    .split('\n')
    .filter((line) => !/^(Heard:|Voice notes are heard by)/.test(line))
    .join('\n');

it('logs a whole test by voice alone, with a correction, and reads it back', LONG, async () => {
  const at = await cook();
  const { api, owner, path } = at;
  const bot = spawnBot(at.environment);
  api.say({ from: owner, text: 'speak when I speak' });
  await api.awaitCalls({ method: 'sendMessage' }, 1);
  await says(at, 'ribeye fourteen point two pounds at seven dollars forty');
  await says(at, 'fat one point nine pounds');
  await says(at, 'make that two point one pounds', 'no, two point one pounds');
  await says(at, 'twelve portions at sixteen ounces');
  const recorded = recordedTexts(path).length;
  await answered(at, () => sendNote(at, kitchenNoise()));
  expect(recordedTexts(path)).toHaveLength(recorded);
  const card = cardIn(at, owner).text;
  for (const part of ['ribeye 14.2 lb', 'fat 2.1 lb', '12 portions of 16 oz']) expect(card).toContain(part);
  const state = (await says(at, 'where are we')).at(-2)?.text ?? '';
  expect(state).toContain('fat 2.1 lb');
  const sound = await lastSound(at);
  expect(Buffer.from(sound).equals(Buffer.from(await speak(forTheEar(state))))).toBe(true);
  expect((await decodeNote(sound)).samples.length).toBeGreaterThan(3 * 16_000);
  const closed = await says(at, 'done');
  expect(closed.some(({ text }) => text.includes('Ribeye closed') || text.includes('ribeye closed'))).toBe(
    true,
  );
  expect(await bot.kill('SIGTERM')).toBe(0);
});

/** A server that hears a sentence, slowly. Killed in between, the bot asks it again. */
async function slowEar(text: string): Promise<{ readonly url: string; readonly asked: () => number }> {
  let count = 0;
  const server = createServer((request, response) => {
    request.resume().on('end', () => {
      count += 1;
      setTimeout(() => {
        response.end(JSON.stringify({ text, segments: [{ avg_logprob: -0.001 }] }));
      }, 1500);
    });
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, asked: () => count };
}

it('hears a note again after it was killed, and records it once', LONG, async () => {
  const at = await cook();
  const { api, owner, path } = at;
  const ear = await slowEar('ribeye 14.2 pounds at 7 dollars 40');
  const environment = { ...at.environment, SPEECH_ENGINE: `http:${ear.url}` };
  let bot: Process = spawnBot(environment);
  sendNote(at, encodeNote({ samples: new Float32Array(32_000).fill(0.1) }));
  // What ends the process three times is put aside, and that is told.
  for (let kills = 1; kills <= 2; kills += 1) {
    await expect.poll(ear.asked, SOON).toBe(kills);
    await bot.kill('SIGKILL');
    expect(recordedTexts(path)).toEqual([]);
    bot = spawnBot(environment);
  }
  await expect.poll(() => recordedTexts(path), SOON).toEqual(['ribeye 14.2 pounds at 7 dollars 40']);
  await api.awaitCalls({ method: 'setMessageReaction' }, 1);
  expect(await bot.kill('SIGTERM')).toBe(0);
  const again = spawnBot(environment);
  api.say({ from: owner, text: 'trim 1.1' });
  await expect.poll(() => recordedTexts(path).length, SOON).toBe(2);
  expect(ear.asked()).toBe(3);
  expect(api.repeatedTexts()).toEqual([]);
  expect(api.countEffects({ method: 'sendMessage' })).toBe(1);
  expect(await again.kill('SIGTERM')).toBe(0);
});
