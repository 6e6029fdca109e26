// `npm run bench:speech -- FOLDER [--json]`: how well and how fast voice notes are heard. The folder holds in.tsv (id, tab, what is
// said), folders of recordings named ID.VOICE.ogg, each a condition, and `reject` with what must not become an entry.
import { cpus } from 'node:os';
import { join } from 'node:path';
import { embedded } from '../../src/speech/embedded/engine.ts';
import { measureClips } from './speech/clips.ts';
import { readSet } from './speech/set.ts';
import { summary } from './speech/summary.ts';

const [folder, ...options] = process.argv.slice(2).filter((arg) => arg !== '--json');
if (folder === undefined || options.length > 0) {
  console.error('bench:speech FOLDER [--json]');
  process.exitCode = 2;
} else {
  const recogniser = embedded(join(process.cwd(), 'src/speech/embedded/worker.js'));
  const heard = await measureClips(recogniser, readSet(folder));
  await recogniser.close();
  const machine = { cpu: cpus()[0]?.model ?? '', cores: cpus().length, node: process.version };
  const result = { machine, engine: recogniser.name, ...summary(heard) };
  console.log(JSON.stringify(result, null, process.argv.includes('--json') ? undefined : 2));
}
