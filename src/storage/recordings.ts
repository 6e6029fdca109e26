// The voice notes that kitchens keep: a file each, in a folder beside the database, in one folder a kitchen. The name begins
// with the time, so that a copy of the folder ages like the folder itself. What is due is deleted at the next look.
import { mkdir, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { KeepRecording } from '../app/ports/recordings.ts';
import type { KitchenId } from '../app/ports/store.ts';

interface RecordingsParts {
  readonly folder: string;
  /** For how many days a kitchen keeps them now; undefined where it does not. */
  readonly daysOf: (kitchen: KitchenId) => number | undefined;
  readonly kitchens: readonly KitchenId[];
  /** Of a kitchen, in bytes: beyond it the oldest go first. */
  readonly most?: number;
}

export interface Recordings {
  readonly keep: KeepRecording;
  /** Deletes what is due at a time, in milliseconds of UTC. */
  readonly sweep: (nowMs: number) => Promise<void>;
}

/** Some fifty thousand short notes. */
const MOST_BYTES = 1_000_000_000;
const DAY_MS = 24 * 3600 * 1000;
/** Nobody but the account that runs the program reads what people said. */
const [OWN_FOLDER, OWN_FILE] = [0o700, 0o600];

export function recordingsIn({ folder, daysOf, kitchens, most = MOST_BYTES }: RecordingsParts): Recordings {
  const sweep = async (kitchen: KitchenId, nowMs: number): Promise<void> => {
    const days = daysOf(kitchen);
    const all = await kept(join(folder, kitchen));
    const dueMs = days === undefined ? Infinity : nowMs - days * DAY_MS;
    const young = all.filter(({ atMs }) => atMs > dueMs);
    const due = [...all.filter(({ atMs }) => atMs <= dueMs), ...tooMany(young, most)];
    for (const { path } of due) await rm(path, { force: true });
  };
  return {
    keep: async ({ kitchen, id, bytes, at }) => {
      if (daysOf(kitchen) === undefined) return;
      await mkdir(join(folder, kitchen), { recursive: true, mode: OWN_FOLDER });
      await writeFile(join(folder, kitchen, nameOf(id, at, bytes)), bytes, { mode: OWN_FILE });
    },
    sweep: async (nowMs) => {
      for (const kitchen of kitchens) await sweep(kitchen, nowMs);
    },
  };
}

interface Kept {
  readonly path: string;
  readonly atMs: number;
  readonly size: number;
}

const NAME = /^(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)Z-[\w-]+\.(?:ogg|wav)$/;

/** "2026-03-06T09-30-00Z-12_34.ogg". */
function nameOf(id: string, at: string, bytes: Uint8Array): string {
  const time = `${at.slice(0, 19).replaceAll(':', '-')}Z`;
  const isOgg = Buffer.from(bytes.subarray(0, 4)).toString('latin1') === 'OggS';
  return `${time}-${id.replace(/[^\w-]/g, '_')}.${isOgg ? 'ogg' : 'wav'}`;
}

/** The oldest first. A file under another name is not ours, and stays. */
async function kept(folder: string): Promise<readonly Kept[]> {
  const names = await readdir(folder).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  });
  const ours = names.filter((name) => NAME.test(name)).sort();
  return Promise.all(
    ours.map(async (name) => {
      const path = join(folder, name);
      return { path, atMs: Date.parse(name.replace(NAME, '$1$2:$3:$4Z')), size: (await stat(path)).size };
    }),
  );
}

/** The oldest of those that are more than there may be. */
function tooMany(all: readonly Kept[], most: number): readonly Kept[] {
  const gone: Kept[] = [];
  let left = all.reduce((sum, { size }) => sum + size, 0);
  for (const each of all) {
    if (left <= most) break;
    gone.push(each);
    left -= each.size;
  }
  return gone;
}
