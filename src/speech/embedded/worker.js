// The recogniser in a thread of its own: it computes without a pause, and its runtime ends the thread at a fault.
// Plain JavaScript, as the thread is started from this file. Two tasks: {passes} says what is heard in each of several
// versions of the same sound, {rivals} how well it fits what was heard, the best of some near sentences, and any sounds.
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
const SETTING = {
  hmm: join(home, 'model', 'en-us'),
  samprate: 16000,
  loglevel: 'FATAL',
  // Scores are then measured against every sound of the language, not only those of the grammar: sound that is no
  // speech, or other speech, scores low in each frame.
  compallsen: true,
  // The grammar is small: what it likes less is told by its own weights, and few paths are given up early.
  lw: 1,
  beam: 1e-64,
  wbeam: 1e-40,
  pbeam: 1e-64,
};
/** One for the grammar and one to compare: a grammar is set slowly, and mostly stays from note to note. */
const [ear, judge] = [new engine.Decoder(SETTING), new engine.Decoder(SETTING)];
await Promise.all([ear.initialize(), judge.initialize()]);

const PHONES =
  'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH';
// A word for each sound, by a name that no language has.
const SOUNDS = PHONES.split(' ').map((phone) => [`sound-${phone.toLowerCase()}`, phone]);
for (const [word, phone] of SOUNDS) judge.add_words([word, phone]);
const ANY_SOUNDS = jsgf(`(${SOUNDS.map(([word]) => word).join(' | ')})+`);

/** The grammar that each has. */
const grammars = new Map();
const known = new Set();

function jsgf(said) {
  return `#JSGF V1.0;\ngrammar ear;\npublic <said> = ${said};`;
}

function prepare({ pronounced, spelled }) {
  const fresh = pronounced.filter(([word, phones]) => !known.has(word + phones));
  for (const [word, phones] of fresh) {
    known.add(word + phones);
    add(ear, word, phones);
    add(judge, word, phones);
  }
  for (const decoder of [ear, judge])
    for (const [word, phones] of spelled) if (decoder.lookup_word(word) === null) add(decoder, word, phones);
}

function add(decoder, word, phones) {
  // A second pronunciation of a word is written with a number.
  for (let at = 1; at < 5; at += 1) {
    const name = at === 1 ? word : `${word}(${at})`;
    const there = decoder.lookup_word(name);
    if (there === phones) return;
    if (there === null) return void decoder.add_words([name, phones]);
  }
}

/** The words, and how well they fit: nothing fits better than 0. */
function listen(decoder, samples, text) {
  if (text !== grammars.get(decoder)) decoder.set_grammar(text);
  grammars.set(decoder, text);
  decoder.start();
  decoder.process_audio(samples, false, true);
  decoder.stop();
  const words = decoder.get_text();
  if (words === '') return { words: '', score: -Infinity };
  const address = engine._malloc(4);
  engine._decoder_hyp(decoder.cdecoder, address);
  const score = engine.HEAP32[address >> 2];
  engine._free(address);
  return { words, score };
}

function hear({ samples, expected }) {
  prepare(expected);
  return { passes: samples.map((each) => listen(ear, each, expected.grammar)) };
}

function compare({ samples: [samples], words, near }) {
  const own = listen(judge, samples, jsgf(words)).score;
  const rival =
    near.length === 0 ? { words: '', score: -Infinity } : listen(judge, samples, jsgf(near.join(' | ')));
  return { own, near: rival, sounds: listen(judge, samples, ANY_SOUNDS).score };
}

parentPort.on('message', ({ id, task, ...asked }) => {
  const answer = task === 'passes' ? hear(asked) : compare(asked);
  parentPort.postMessage({ id, ...answer, bytes: engine.HEAPU8.length });
});
parentPort.postMessage({ ready: true });
