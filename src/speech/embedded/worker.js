// The recogniser in a thread of its own: it computes without a pause, and its runtime ends the thread at a fault.
// Plain JavaScript, as the thread is started from this file. Takes {samples, grammar, pronounced, spelled}, gives {passes}.
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parentPort } from 'node:worker_threads';

const require = createRequire(import.meta.url);
// The package offers no path to its model; it stands beside the program. A relative one is looked for in the working folder.
const home = dirname(require.resolve('soundswallower'));
const { default: load } = await import(pathToFileURL(join(home, 'soundswallower.node.js')).href);
const silent = () => undefined;
const engine = await load({ print: silent, printErr: silent });
const decoder = new engine.Decoder({
  hmm: join(home, 'model', 'en-us'),
  samprate: 16000,
  loglevel: 'FATAL',
  // Scores are then measured against every sound of the language, not only those of the grammar: sound that is no
  // speech, or other speech, scores low in each frame.
  compallsen: true,
});
await decoder.initialize();
const known = new Set();
let grammar = '';

function prepare(asked) {
  for (const [word, phones] of asked.pronounced) if (!known.has(word + phones)) add(word, phones);
  for (const [word, phones] of asked.spelled) if (decoder.lookup_word(word) === null) add(word, phones);
  if (asked.grammar !== grammar) decoder.set_grammar(asked.grammar);
  grammar = asked.grammar;
}

function add(word, phones) {
  known.add(word + phones);
  // A second pronunciation of a word is written with a number.
  for (let at = 1; at < 5; at += 1) {
    const name = at === 1 ? word : `${word}(${at})`;
    const there = decoder.lookup_word(name);
    if (there === phones) return;
    if (there === null) return void decoder.add_words([name, phones]);
  }
}

function listen(samples) {
  decoder.start();
  decoder.process_audio(samples, false, true);
  decoder.stop();
  const words = decoder.get_text();
  if (words === '') return { words: '', score: -Infinity };
  const address = engine._malloc(4);
  engine._decoder_hyp(decoder.cdecoder, address);
  const score = engine.HEAP32[address >> 2];
  engine._free(address);
  return { words, score: score / (samples.length / 160) };
}

parentPort.on('message', ({ id, samples, ...asked }) => {
  prepare(asked);
  const passes = samples.map(listen);
  parentPort.postMessage({ id, passes, bytes: engine.HEAPU8.length });
});
parentPort.postMessage({ ready: true });
