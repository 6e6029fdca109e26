// Files both ways, and bodies of each kind.
import { InputFile } from 'grammy';
import { expect, it } from 'vitest';
import { given, kitchenGroup, post, refusedWith, type Given } from './given.ts';

const OGG = Buffer.from('OggS voice');
/** The head of a PNG of 3 × 2. */
const PNG = Buffer.from('89504e470d0a1a0a0000000d494844520000000300000002', 'hex');

const download = ({ service }: Given, path: string): Promise<Response> =>
  fetch(`${service.url}/file/bot${service.token}/${path}`);

const sayVoice = ({ service, cook }: Given, more: { readonly claimedSize?: number } = {}) =>
  service.sayVoice({ from: cook, base64: OGG.toString('base64'), duration: 2, ...more }).message.voice;

it('hands over a voice note by a link that ends', async () => {
  const all = await given();
  const voice = sayVoice(all);
  expect(voice).toMatchObject({ duration: 2, mime_type: 'audio/ogg', file_size: OGG.length });
  const { file_path = '' } = await all.bot.getFile(voice?.file_id ?? '');
  const response = await download(all, file_path);
  expect(Buffer.from(await response.arrayBuffer())).toEqual(OGG);
  all.service.expireLinks();
  expect((await download(all, file_path)).status).toBe(404);
});

it('refuses a file that is unknown, or larger than 20 MB', async () => {
  const all = await given();
  const voice = sayVoice(all, { claimedSize: 21 * 1024 * 1024 });
  expect(await refusedWith(all.bot.getFile(voice?.file_id ?? ''))).toContain(
    '400 Bad Request: file is too big',
  );
  expect(await refusedWith(all.bot.getFile('none'))).toContain('400 Bad Request: invalid file_id');
});

it('shows the photos of an album as messages of one group', async () => {
  const { service, cook } = await given();
  const base64 = PNG.toString('base64');
  const album = service.sayAlbum({ from: cook, base64, caption: 'the ribeye' }, 3);
  const [first, second, third] = album.map(({ message }) => message);
  expect(first?.caption).toBe('the ribeye');
  expect(second?.caption).toBeUndefined();
  expect(third?.media_group_id).toBe(first?.media_group_id);
});

it('takes uploads as the client of the bot makes them', async () => {
  const { service, bot, cook } = await given();
  const voice = await bot.sendVoice(cook, new InputFile(OGG, 'a.ogg'), {
    caption: '<b>hi</b>',
    parse_mode: 'HTML',
  });
  expect(voice).toMatchObject({ voice: { file_size: OGG.length }, caption: 'hi' });
  const photo = await bot.sendPhoto(cook, new InputFile(PNG, 'a.png'));
  expect(photo.photo).toMatchObject([{ width: 3, height: 2 }]);
  const sheet = await bot.sendDocument(cook, new InputFile(Buffer.from('a,b\r\n'), 'tests.csv'));
  expect(sheet.document).toMatchObject({ file_name: 'tests.csv', file_size: 5 });
  const again = await bot.sendVoice(cook, voice.voice.file_id);
  expect(again.voice.file_id).toBe(voice.voice.file_id);
  expect(service.seenFromBot(cook)).toHaveLength(4);
});

it('refuses an empty file, a photo that is none, and a long caption', async () => {
  const { bot, cook } = await given();
  expect(await refusedWith(bot.sendVoice(cook, new InputFile(Buffer.alloc(0), 'a')))).toContain('non-empty');
  expect(await refusedWith(bot.sendPhoto(cook, new InputFile(OGG, 'a.png')))).toContain(
    'IMAGE_PROCESS_FAILED',
  );
  const long = bot.sendVoice(cook, new InputFile(OGG, 'a'), { caption: 'x'.repeat(1025) });
  expect(await refusedWith(long)).toContain('message caption is too long');
});

it('reads forms as it reads JSON', async () => {
  const all = await given();
  const chat = kitchenGroup(all);
  const fields = {
    chat_id: String(chat),
    text: 'trim ½ & fat',
    reply_markup: '{"inline_keyboard":[[{"text":"Undo","callback_data":"u"}]]}',
  };
  await post(all.service, 'sendMessage', { body: new URLSearchParams(fields) });
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  // Names of methods are not case-sensitive.
  await post(all.service, 'SENDMESSAGE', { body: form });
  const buttons = [[{ text: 'Undo', data: 'u' }]];
  const expected = { text: 'trim ½ & fat', buttons };
  expect(all.service.seenFromBot(chat)).toMatchObject([expected, expected]);
});

it.each(['{', '[]', '"x"'])('refuses the JSON %s', async (body) => {
  const { service } = await given();
  const headers = { 'content-type': 'application/json' };
  expect(await post(service, 'getMe', { body, headers })).toMatchObject({ ok: false, error_code: 400 });
});
