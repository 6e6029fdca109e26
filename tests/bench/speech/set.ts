// The recordings of a folder, with what is said in them.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';

export interface Clip {
  readonly path: string;
  readonly condition: string;
  readonly voice: string;
  /** Undefined where nothing is for us: noise, or talk. */
  readonly said: string | undefined;
}

export function readSet(folder: string): readonly Clip[] {
  const rows = readFileSync(join(folder, 'in.tsv'), 'utf8').trim().split('\n');
  const said = new Map(rows.map((row) => row.split('\t') as [string, string]));
  const conditions = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return conditions.flatMap(({ name: condition }) =>
    readdirSync(join(folder, condition)).map((file) => clipOf(said, { folder, condition, file })),
  );
}

export type Half = 'tune' | 'report';

/** Half of the sentences, talk and noise with it: what is tuned on one half is reported on the other. */
export function half(clips: readonly Clip[], wanted: Half): readonly Clip[] {
  const places = new Map<string, number>();
  const placeOf = (key: string, isSaid: boolean): number => {
    const kind = isSaid ? 'said' : 'not said';
    const there = places.get(`${kind}: ${key}`);
    if (there !== undefined) return there;
    const place = places.get(kind) ?? 0;
    places.set(kind, place + 1).set(`${kind}: ${key}`, place);
    return place;
  };
  return clips.filter(({ path, said }) => {
    const key = said ?? basename(path).split('.').slice(0, 2).join('.');
    return placeOf(key, said !== undefined) % 2 === (wanted === 'tune' ? 0 : 1);
  });
}

function clipOf(
  said: ReadonlyMap<string, string>,
  { folder, condition, file }: { folder: string; condition: string; file: string },
): Clip {
  const [id = '', ...rest] = file.split('.');
  const path = join(folder, condition, file);
  if (condition === 'reject')
    return { path, condition: `reject ${id}`, voice: rest.at(-2) ?? '', said: undefined };
  const words = said.get(id);
  if (words === undefined) throw new Error(`${path}: not in in.tsv`);
  return { path, condition, voice: rest.at(-2) ?? '', said: words };
}
