// The recogniser in a thread of its own: it computes without a pause, and its runtime ends the thread at a fault.
// Plain JavaScript, as the thread is started from this file. It answers how well a sound fits an automaton of words, by
// one of several listeners: {by, samples, automaton, pronounced, spelled} to {words, score}.
import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parentPort } from 'node:worker_threads';

const require = createRequire(import.meta.url);
// The package offers no path to its model; it stands beside the program. A relative one is looked for in the working folder.
const home = dirname(require.resolve('soundswallower'));
const { default: load } = await import(pathToFileURL(join(home, 'soundswallower.node.js')).href);
const silent = () => undefined;
const engine = await load({ print: silent, printErr: silent });
const NARROW = join(home, 'model', 'en-us');
const WIDE = join(dirname(fileURLToPath(import.meta.url)), 'model');
const SETTING = {
  samprate: 16000,
  loglevel: 'FATAL',
  // The grammar is small: what it likes less is told by its own weights, and few paths are given up early.
  lw: 1,
  beam: 1e-48,
  wbeam: 1e-30,
  pbeam: 1e-48,
};
/** Of the dictionary they are told only the words that are listened for: to read all of it takes each half a second. */
const WORDLESS = { dict: join(NARROW, 'none'), fdict: join(NARROW, 'noisedict.txt') };
const dictionary = `\n${readFileSync(join(NARROW, 'dict.txt'), 'utf8')}`;

/** A grammar is set slowly, and mostly stays from note to note: so the one to compare is not the one to hear. */
const listeners = {
  wide: new engine.Decoder({ ...SETTING, ...WORDLESS, hmm: WIDE }),
  narrow: new engine.Decoder({ ...SETTING, ...WORDLESS, hmm: NARROW }),
  // Its scores are measured against every sound of the language, not only those of the sentences: sound that is no speech,
  // or other speech, scores low in each frame. That is dear, so that the sounds of every second frame stand for two.
  judge: new engine.Decoder({ ...SETTING, ...WORDLESS, hmm: WIDE, compallsen: true, ds: 2 }),
};
for (const listener of Object.values(listeners)) await listener.initialize();

const PHONES =
  'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH';
// A word for each sound, by a name that no language has.
for (const phone of PHONES.split(' ')) listeners.judge.add_words([`sound-${phone.toLowerCase()}`, phone]);

/** The grammar that each has. */
const keys = new Map();
const known = new Set();

const looked = new Map();

function inDictionaryOnce(word) {
  if (!looked.has(word)) looked.set(word, inDictionary(word));
  return looked.get(word);
}

/** How a word sounds by the dictionary: its line, and those of its other pronunciations, are "word phones", "word(2) phones". */
function inDictionary(word) {
  const found = [];
  for (const name of [word, `${word}(2)`, `${word}(3)`]) {
    const at = dictionary.indexOf(`\n${name} `);
    if (at < 0) break;
    const from = at + name.length + 2;
    found.push(dictionary.slice(from, dictionary.indexOf('\n', from)).trim());
  }
  return found;
}

/** The dictionary's ways to say it and ours; where there are none, the one by rule. */
function prepare({ pronounced, spelled }) {
  for (const [word, phones] of pronounced) learn(word, [...inDictionaryOnce(word), phones]);
  for (const [word, phones] of spelled) {
    const listed = inDictionaryOnce(word);
    learn(word, listed.length > 0 ? listed : [phones]);
  }
}

function learn(word, sounds) {
  for (const phones of sounds) {
    if (known.has(`${word} ${phones}`)) continue;
    known.add(`${word} ${phones}`);
    for (const listener of Object.values(listeners)) add(listener, word, phones);
  }
}

function add(listener, word, phones) {
  // A second pronunciation of a word is written with a number.
  for (let at = 1; at < 5; at += 1) {
    const name = at === 1 ? word : `${word}(${at})`;
    const there = listener.lookup_word(name);
    if (there === phones) return;
    if (there === null) return void listener.add_words([name, phones]);
  }
}

function withText(text, use) {
  const bytes = Buffer.from(`${text}\0`);
  const address = engine._malloc(bytes.length);
  engine.HEAPU8.set(bytes, address);
  const result = use(address);
  engine._free(address);
  return result;
}

function setAutomaton(listener, { states, start, end, arcs }) {
  const logs = engine._decoder_logmath(listener.cdecoder);
  const model = withText('ear', (name) => engine._fsg_model_init(name, logs, SETTING.lw, states));
  engine._fsg_set_states(model, start, end);
  const words = new Map();
  for (const { from, to, word, logp } of arcs) {
    if (word !== undefined && listener.lookup_word(word) === null) learn(word, inDictionaryOnce(word));
    const log = Math.trunc(engine._logmath_log(logs, Math.exp(logp)));
    if (word === undefined) {
      engine._fsg_model_null_trans_add(model, from, to, log);
      continue;
    }
    if (!words.has(word))
      words.set(
        word,
        withText(word, (address) => engine._fsg_model_word_add(model, address)),
      );
    engine._fsg_model_trans_add(model, from, to, log, words.get(word));
  }
  if (engine._decoder_set_fsg(listener.cdecoder, model) < 0) throw new Error('the automaton was refused');
}

/** The words, and how well they fit: nothing fits better than 0. */
function listen({ by, samples, automaton }) {
  const listener = listeners[by];
  const key = JSON.stringify(automaton);
  if (keys.get(by) !== key) setAutomaton(listener, automaton);
  keys.set(by, key);
  listener.start();
  listener.process_audio(samples, false, true);
  listener.stop();
  const words = listener.get_text();
  if (words === '') return { words: '', score: -Infinity };
  const address = engine._malloc(4);
  engine._decoder_hyp(listener.cdecoder, address);
  const score = engine.HEAP32[address >> 2];
  engine._free(address);
  return { words, score };
}

parentPort.on('message', ({ id, pronounced, spelled, ...asked }) => {
  prepare({ pronounced, spelled });
  parentPort.postMessage({ id, ...listen(asked), bytes: engine.HEAPU8.length });
});
parentPort.postMessage({ ready: true });
