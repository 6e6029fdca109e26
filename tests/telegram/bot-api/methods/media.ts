// Files from the bot: voice notes, photos, documents. And the link to a file that a person sent.
import type { File, Message } from 'grammy/types';
import { integer, isUpload, text, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { readMarked } from '../text/marked.ts';
import { described, storeFile, type FileKind } from '../world/files.ts';
import { openRoomOf } from '../world/rooms.ts';
import { nowMs, type StoredFile, type World } from '../world/world.ts';
import { readKeyboard } from './keyboard.ts';
import { entitiesOf, postFromBot } from './messages.ts';
import { imageSize } from './image-size.ts';
import { readReply } from './reply.ts';

const LONGEST_CAPTION = 1024;
const MEBIBYTE = 1024 * 1024;
const LARGEST_DOWNLOAD = 20 * MEBIBYTE;
const LARGEST_UPLOAD: Readonly<Record<FileKind, number>> = {
  voice: 50 * MEBIBYTE,
  photo: 10 * MEBIBYTE,
  document: 50 * MEBIBYTE,
};
const CAPTION = { text: 'caption', entities: 'caption_entities' };

type Media = Pick<Message, 'voice' | 'photo' | 'document'>;

export const sendVoice = (world: World, params: Params): Message =>
  sendFile(world, params, 'voice', (file) => ({
    voice: { ...described(file), duration: integer(params, 'duration') ?? 0, mime_type: 'audio/ogg' },
  }));

export const sendPhoto = (world: World, params: Params): Message =>
  sendFile(world, params, 'photo', (file) => {
    const size = imageSize(file.bytes);
    if (size === undefined) throw badRequest('IMAGE_PROCESS_FAILED');
    return { photo: [{ ...described(file), ...size }] };
  });

export const sendDocument = (world: World, params: Params): Message =>
  sendFile(world, params, 'document', (file) => {
    const upload = uploadOf(params, 'document');
    return { document: { ...described(file), file_name: upload?.fileName ?? 'file' } };
  });

function sendFile(
  world: World,
  params: Params,
  kind: FileKind,
  contentOf: (file: StoredFile) => Media,
): Message {
  const room = openRoomOf(world, params);
  const caption = readCaption(params);
  const reply_markup = readKeyboard(params, false);
  const reply_to_message = readReply(room, params);
  const content = contentOf(fileOf(world, params, kind));
  return postFromBot(world, room, params, { ...content, ...caption, reply_to_message, reply_markup });
}

/** By its id, or uploaded: under the name of the parameter, or under another that `attach://` gives. */
function fileOf(world: World, params: Params, kind: FileKind): StoredFile {
  const upload = uploadOf(params, kind);
  if (upload !== undefined) {
    if (upload.bytes.length === 0) throw badRequest('file must be non-empty');
    if (upload.bytes.length > LARGEST_UPLOAD[kind]) throw badRequest('file is too big');
    return storeFile(world, { kind, ...upload });
  }
  const id = text(params, kind);
  if (id === undefined || id === '') throw badRequest(`there is no ${kind} in the request`);
  const known = world.files.get(id);
  if (known === undefined) throw badRequest('wrong remote file identifier specified');
  return known;
}

function uploadOf(params: Params, kind: FileKind) {
  const value = params[kind];
  if (isUpload(value)) return value;
  const attached = typeof value === 'string' ? /^attach:\/\/(.+)$/.exec(value)?.[1] : undefined;
  const upload = attached === undefined ? undefined : params[attached];
  return isUpload(upload) ? upload : undefined;
}

function readCaption(params: Params): Partial<Message> {
  const marked = readMarked(params, CAPTION);
  if (marked === undefined) return {};
  if (marked.text.length > LONGEST_CAPTION) throw badRequest('message caption is too long');
  return { caption: marked.text, caption_entities: entitiesOf(marked) };
}

export function getFile(world: World, params: Params): File {
  const file = world.files.get(text(params, 'file_id') ?? '');
  if (file === undefined) throw badRequest('invalid file_id');
  if (file.file_size > LARGEST_DOWNLOAD) throw badRequest('file is too big');
  file.linkEndsMs = nowMs(world) + world.options.linkLifetimeSeconds * 1000;
  return { ...described(file), file_path: file.path };
}

/** The bytes behind a link that is still good. */
export function downloadOf(world: World, path: string): Uint8Array | undefined {
  const file = [...world.files.values()].find((one) => one.path === path);
  return file !== undefined && file.linkEndsMs > nowMs(world) ? file.bytes : undefined;
}
