// Files that people and the bot have sent.
import { type StoredFile, type World, nextNumber } from './world.ts';

export type FileKind = 'voice' | 'photo' | 'document';

const FOLDERS: Readonly<Record<FileKind, readonly [string, string]>> = {
  voice: ['voice', 'oga'],
  photo: ['photos', 'jpg'],
  document: ['documents', 'bin'],
};

export interface NewFile {
  readonly kind: FileKind;
  readonly bytes: Uint8Array;
  readonly fileName?: string;
  /** More than there is, for a test of files that are too large. */
  readonly claimedSize?: number;
}

export function storeFile(world: World, { kind, bytes, fileName, claimedSize }: NewFile): StoredFile {
  const number = nextNumber(world);
  const [folder, ending] = FOLDERS[kind];
  const own = /\.(\w{1,8})$/.exec(fileName ?? '')?.[1];
  const file: StoredFile = {
    file_id: `AwACAgIAAxkBAAI${kind}${String(number).padStart(8, '0')}`,
    file_unique_id: `AgAD${String(number).padStart(8, '0')}`,
    bytes,
    file_size: claimedSize ?? bytes.length,
    path: `${folder}/file_${String(number)}.${kind === 'document' ? (own ?? ending) : ending}`,
    linkEndsMs: 0,
  };
  world.files.set(file.file_id, file);
  return file;
}

export const described = ({ file_id, file_unique_id, file_size }: StoredFile) => ({
  file_id,
  file_unique_id,
  file_size,
});
