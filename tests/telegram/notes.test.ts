// Voice notes in a chat: heard aside, taken like typed words, asked about where the ear is not sure. And files that go with an answer.
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { HearNote } from '../../src/app/ports/hearing.ts';
import type { Recording } from '../../src/app/ports/recordings.ts';
import type { SpeechFault } from '../../src/app/ports/speech.ts';
import { paperMaker } from '../../src/papers/maker.ts';
import { say } from '../../src/core/reply.ts';
import { newPath, QUICK, recordedTexts, runBot, words } from './running.ts';
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

async function listening(
  hear: HearNote = ear,
  more: Partial<Parameters<typeof runBot>[0]> = {},
): Promise<Heard> {
  const api = await service();
  const path = newPath();
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const bot = await runBot({ service: api, owner, path, ears: new Map([['kitchen', hear]]), ...more });
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

it('hands what was heard to be kept, and not what could not be read', async () => {
  const kept: Recording[] = [];
  const keep = (recording: Recording): Promise<void> => {
    kept.push(recording);
    return Promise.reject(new Error('the disk is full'));
  };
  const kitchen = await listening(
    (bytes, speaker) =>
      bytes.length === 1
        ? Promise.resolve({ is: 'trouble', fault: 'nonsense', reply: say('speech-nonsense') })
        : ear(bytes, speaker),
    { keep },
  );
  for (const text of ['0.99|ribeye fourteen point two pounds', '0.1|', 'x'])
    await shownBy(kitchen, kitchen.owner, () => note(kitchen, text));
  expect(kept.map(({ kitchen: id, bytes }) => [id, Buffer.from(bytes).toString()])).toEqual([
    ['kitchen', '0.99|ribeye fourteen point two pounds'],
    ['kitchen', '0.1|'],
  ]);
  expect(recordedTexts(kitchen.path)).toEqual(['ribeye fourteen point two pounds']);
});

it('tells that a note can no longer be fetched', async () => {
  const kitchen = await listening();
  const { api, owner } = kitchen;
  api.fail({ method: 'getFile', when: { kind: 'always' }, answer: { kind: 'error', code: 400 } });
  const shown = await shownBy(kitchen, owner, () => note(kitchen, '0.99|ribeye fourteen point two pounds'));
  expect(lastWords(shown)).toContain("can't get at that voice note");
});

/** An ear that hears as soon as it is let. */
function heldEar(): { readonly hear: HearNote; readonly release: () => void } {
  let release = (): void => undefined;
  const released = new Promise<void>((resolve) => (release = resolve));
  return {
    hear: async (bytes, speaker) => {
      await released;
      return ear(bytes, speaker);
    },
    release: () => {
      release();
    },
  };
}

it('shows that it hears while it takes long, says so once, and answers when it is done', async () => {
  const { hear, release } = heldEar();
  const kitchen = await listening(hear);
  const { api, owner } = kitchen;
  note(kitchen, '0.99|ribeye fourteen point two at seven forty');
  await api.awaitCalls({ method: 'sendChatAction' }, 2);
  await expect
    .poll(() => api.seenFromBot(owner).map(({ text }) => text))
    .toEqual([words(say('telegram-hearing-slow'))]);
  release();
  await quiet(kitchen);
  expect(cardIn(kitchen, owner).text).toContain('ribeye 14.2 lb');
  const signs = api.countEffects({ method: 'sendChatAction' });
  expect(api.seenFromBot(owner)).toHaveLength(2);
  await wait(3 * QUICK.signMs);
  expect(api.countEffects({ method: 'sendChatAction' })).toBe(signs);
});

it('shows nothing of the kind where a note is heard before that', async () => {
  // So long that no busy machine takes it.
  const kitchen = await listening(ear, { pace: { ...QUICK, hearingMs: 600_000 } });
  await shownBy(kitchen, kitchen.owner, () => note(kitchen, '0.99|ribeye fourteen point two at seven forty'));
  expect(kitchen.api.calls({ method: 'sendChatAction' })).toEqual([]);
});

it('says once that it takes long, though the note is heard again, and records it once', async () => {
  let times = 0;
  const kitchen = await listening(async (bytes, speaker) => {
    times += 1;
    await wait(2 * QUICK.slowMs);
    if (times === 1) throw new Error('the engine fell over');
    return ear(bytes, speaker);
  });
  const { owner, path } = kitchen;
  const shown = await shownBy(kitchen, owner, () => note(kitchen, '0.99|ribeye fourteen point two pounds'));
  expect(times).toBe(2);
  expect(shown.filter(({ text }) => text === words(say('telegram-hearing-slow')))).toHaveLength(1);
  expect(recordedTexts(path)).toEqual(['ribeye fourteen point two pounds']);
});

const sound = (api: Talk['api'], owner: number, text: string): unknown =>
  api.sayDocument({ from: owner, base64: base64(text), fileName: 'note.wav', mimeType: 'audio/wav' });

it('hears a file of sound like a note', async () => {
  const kitchen = await listening();
  await shownBy(kitchen, kitchen.owner, () =>
    sound(kitchen.api, kitchen.owner, '0.99|ribeye fourteen point two pounds'),
  );
  expect(recordedTexts(kitchen.path)).toEqual(['ribeye fourteen point two pounds']);
});

it.each<[string, object, string]>([
  ['two hours long', { duration: 7200 }, 'speech-tooLong'],
  ['larger than a minute of speech', { duration: 2, claimedSize: 30_000_000 }, 'speech-tooLarge'],
])('does not fetch a note that is %s, and says so', async (_, more, told) => {
  const kitchen = await listening();
  const { api, owner, path } = kitchen;
  const shown = await shownBy(kitchen, owner, () =>
    api.sayVoice({ from: owner, duration: 2, base64: base64('0.99|trim one'), ...more }),
  );
  expect(lastWords(shown)).toBe(words(say(told)));
  expect(api.calls({ method: 'getFile' })).toEqual([]);
  expect(recordedTexts(path)).toEqual([]);
});

it('fetches a note again where its link has gone', async () => {
  const kitchen = await listening();
  const { api, path } = kitchen;
  api.fail({ method: 'getFile', when: { kind: 'first', count: 1 }, answer: { kind: 'drop' } });
  await shownBy(kitchen, kitchen.owner, () => note(kitchen, '0.99|ribeye fourteen point two pounds'));
  expect(recordedTexts(path)).toEqual(['ribeye fourteen point two pounds']);
});

it('records a note of an answer to a card for the test of that card', async () => {
  const kitchen = await listening();
  const { api, owner } = kitchen;
  await ask(kitchen, owner, 'ribeye 14.2 lb at 7.40');
  const card = cardIn(kitchen, owner);
  await ask(kitchen, owner, 'striploin 12 lb at 9');
  const shown = await shownBy(kitchen, owner, () =>
    api.sayVoice({
      from: owner,
      duration: 2,
      base64: base64('0.99|trim one point one'),
      replyTo: card.message_id,
    }),
  );
  expect(shown.find(({ message_id }) => message_id === card.message_id)?.text).toContain('trim 1.1 lb');
});

it('takes back what was heard by its button, also where there is no card', async () => {
  const kitchen = await listening();
  const { api, owner } = kitchen;
  const [told] = await shownBy(kitchen, owner, () => note(kitchen, '0.99|ribeye is seven ninety five now'));
  expect(told?.buttons.flat().map(({ text }) => text)).toEqual(['Undo']);
  api.press({ user: owner, chat: owner, message_id: told?.message_id ?? 0, text: 'Undo' });
  await quiet(kitchen);
  expect(await ask(kitchen, owner, "what's ribeye at")).not.toContain('7.95');
});

it('takes back what was heard by voice', async () => {
  const kitchen = await listening();
  const { owner } = kitchen;
  for (const said of ['ribeye fourteen point two at seven forty', 'trim one point one', 'scratch that'])
    await shownBy(kitchen, owner, () => note(kitchen, `0.99|${said}`));
  expect(cardIn(kitchen, owner).text).not.toContain('trim 1.1 lb ·');
  expect(await ask(kitchen, owner, 'where are we')).not.toContain('trim');
});

it('lets go of what it half heard when No is pressed', async () => {
  const kitchen = await listening();
  const { api, owner, path } = kitchen;
  const shown = await shownBy(kitchen, owner, () => note(kitchen, '0.8|ribeye fourteen point two pounds'));
  const question = shown.at(-1);
  expect(question?.buttons.flat().map(({ text }) => text)).toEqual(['Yes', 'No']);
  api.press({ user: owner, chat: owner, message_id: question?.message_id ?? 0, text: 'No' });
  await quiet(kitchen);
  expect(recordedTexts(path)).toEqual([]);
});

describe('in a group', () => {
  const inGroup = async (hear: HearNote = ear) => {
    const kitchen = await listening(hear);
    const { id: group } = kitchen.api.addGroup({ title: 'The block', owner: kitchen.owner, members: [] });
    kitchen.api.addBot({ chat: group, by: kitchen.owner, as: 'administrator' });
    await quiet(kitchen);
    return { ...kitchen, group };
  };
  const failing =
    (fault: SpeechFault): HearNote =>
    () =>
      Promise.resolve({ is: 'trouble', fault, reply: say(`speech-${fault}`) });

  it.each([
    ['noise', '0.1|'],
    ['talk that was heard as words', '0.99|good morning everybody'],
  ])('stays silent to %s', async (_, said) => {
    const kitchen = await inGroup();
    const { api, owner, group, path } = kitchen;
    const before = api.seenFromBot(group).length;
    api.sayVoice({ from: owner, chat: group, duration: 2, base64: base64(said) });
    await quiet(kitchen);
    expect(api.seenFromBot(group)).toHaveLength(before);
    expect(api.calls({ method: 'sendChatAction' })).toEqual([]);
    expect(recordedTexts(path)).toEqual([]);
  });

  it('answers noise that was said to it', async () => {
    const kitchen = await inGroup();
    const { api, owner, group } = kitchen;
    const replyTo = api.seenFromBot(group)[0]?.message_id ?? 0;
    const shown = await shownBy(kitchen, group, () =>
      api.sayVoice({ from: owner, chat: group, duration: 2, base64: base64('0.1|'), replyTo }),
    );
    expect(lastWords(shown)).toBe(words(say('heard-nothing')));
  });

  it.each<[SpeechFault, number]>([
    ['tooLong', 0],
    ['off', 0],
    ['timeout', 1],
    ['truncated', 1],
  ])('of a note with the fault %s says %d sentences', async (fault, count) => {
    const kitchen = await inGroup(failing(fault));
    const { api, owner, group } = kitchen;
    const shown = await shownBy(kitchen, group, () =>
      api.sayVoice({ from: owner, chat: group, duration: 2, base64: base64('x') }),
    );
    expect(shown.map(({ text }) => text)).toEqual(Array(count).fill(words(say(`speech-${fault}`))));
  });
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
