// `npm run bench:speech -- FOLDER [--json] [--fit] [--half tune|report] [--every N] [--from K]`: how well and how fast voice notes
// are heard, all or half of the sentences, all or every Nth from the Kth; with --fit, how the sureness would be weighed by these. The folder holds in.tsv (id, tab, what is
// said), folders of recordings named ID.VOICE.ogg, each a condition, and `reject` with what must not become an entry.
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Evidence } from '../../src/speech/embedded/agreement.ts';
import { embedded } from '../../src/speech/embedded/engine.ts';
import { measureClips } from './speech/clips.ts';
import { fitted } from './speech/fit.ts';
import { half, readSet } from './speech/set.ts';
import { summary } from './speech/summary.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean' },
    fit: { type: 'boolean' },
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
  console.error('bench:speech FOLDER [--json] [--fit] [--half tune|report] [--every N] [--from K]');
  process.exitCode = 2;
} else {
  const looks: (Evidence | undefined)[] = [];
  const recogniser = embedded(
    join(process.cwd(), 'src/speech/embedded/worker.js'),
    undefined,
    (evidence) => void looks.push(evidence),
  );
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
  if (looks.length !== heard.length) throw new Error('a clip was not looked at: nothing can be fitted');
  const examples = heard.flatMap(({ isRight }, at) => (looks[at] ? [{ ...looks[at], isRight }] : []));
  const fit = values.fit === true ? { fit: fitted(examples), examples: examples.length } : {};
  const result = { machine, engine: recogniser.name, ...summary(heard), ...fit };
  console.log(JSON.stringify(result, null, values.json === true ? undefined : 2));
}
