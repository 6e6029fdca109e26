// Voice notes, photos, documents and albums that people send.
import type { Message } from 'grammy/types';
import { described, storeFile, type FileKind } from '../world/files.ts';
import { nextNumber, type StoredFile, type World } from '../world/world.ts';
import { type Place, type Said, write } from './talk.ts';

/** Bytes travel as base64, so that a test in another process can give them. */
export interface Sending extends Place {
  readonly base64: string;
  readonly caption?: string;
  readonly fileName?: string;
  readonly mimeType?: string;
  /** What the service says the size is. */
  readonly claimedSize?: number;
}

export const sayVoice = (world: World, sending: Sending & { readonly duration: number }): Said => {
  const file = stored(world, 'voice', sending);
  const mime_type = sending.mimeType ?? 'audio/ogg';
  return send(world, sending, { voice: { ...described(file), duration: sending.duration, mime_type } });
};

export const sayDocument = (world: World, sending: Sending): Said => {
  const file = stored(world, 'document', sending);
  const { fileName: file_name, mimeType: mime_type } = sending;
  return send(world, sending, { document: { ...described(file), file_name, mime_type } });
};

export const sayPhoto = (world: World, sending: Sending): Said => send(world, sending, photo(world, sending));

/** Several photos at once: messages of their own that share a media_group_id. */
export function sayAlbum(world: World, sending: Sending, count: number): readonly Said[] {
  const media_group_id = String(nextNumber(world));
  return Array.from({ length: count }, (_, index) =>
    write(world, sending, {
      ...photo(world, sending),
      media_group_id,
      // Clients put the caption under the first.
      caption: index === 0 ? sending.caption : undefined,
    }),
  );
}

const photo = (world: World, sending: Sending): Partial<Message> => ({
  photo: [{ ...described(stored(world, 'photo', sending)), width: 1280, height: 960 }],
});

const send = (world: World, sending: Sending, content: Partial<Message>): Said =>
  write(world, sending, { ...content, caption: sending.caption });

const stored = (world: World, kind: FileKind, { base64, fileName, claimedSize }: Sending): StoredFile =>
  storeFile(world, { kind, bytes: Buffer.from(base64, 'base64'), fileName, claimedSize });

/** The links that were given out stop working, as after an hour. */
export function expireLinks(world: World): void {
  for (const file of world.files.values()) file.linkEndsMs = 0;
}
