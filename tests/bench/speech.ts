// `npm run bench:speech -- FOLDER [--json] [--half tune|report] [--every N] [--from K]`: how well and how fast voice notes are
// heard, all or half of the sentences, all or every Nth from the Kth. The folder holds in.tsv (id, tab, what is
// said), folders of recordings named ID.VOICE.ogg, each a condition, and `reject` with what must not become an entry.
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { embedded } from '../../src/speech/embedded/engine.ts';
import { measureClips } from './speech/clips.ts';
import { half, readSet } from './speech/set.ts';
import { summary } from './speech/summary.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean' },
    half: { type: 'string' },
    every: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
  },
});
const [folder] = positionals;
const [every, from] = [Number(values.every), Number(values.from)];
const wanted = values.half;
const isHalf = wanted === 'tune' || wanted === 'report';
if (folder === undefined || !(every >= 1) || !(wanted === undefined || isHalf)) {
  console.error('bench:speech FOLDER [--json] [--half tune|report] [--every N] [--from K]');
  process.exitCode = 2;
} else {
  const recogniser = embedded(join(process.cwd(), 'src/speech/embedded/worker.js'));
  const all = readSet(folder);
  const chosen = (isHalf ? half(all, wanted) : all).filter((_, index) => index % every === from);
  const heard = await measureClips(recogniser, chosen);
  await recogniser.close();
  const machine = {
    cpu: cpus()[0]?.model ?? '',
    cores: cpus().length,
    load: loadavg()[0],
    node: process.version,
  };
  const result = { machine, engine: recogniser.name, ...summary(heard) };
  console.log(JSON.stringify(result, null, values.json === true ? undefined : 2));
}
