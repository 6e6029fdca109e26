// The optional engine: layouts are told by their files; without the package or the files it says so.
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SpeechError } from '../../src/app/ports/speech.ts';
import { localRecogniser, modelIn } from '../../src/speech/local.ts';
import { none } from '../../src/speech/none.ts';
import { scratchFolder } from '../storage/scratch.ts';
import { expected } from './given.ts';

function folderWith(...files: readonly string[]): string {
  const folder = join(scratchFolder(), 'model');
  mkdirSync(folder);
  for (const file of files) writeFileSync(join(folder, file), '');
  return folder;
}

const layoutOf = (...files: readonly string[]): unknown => {
  const folder = folderWith(...files);
  const shorter = JSON.stringify(modelIn(folder, 'en')).replaceAll(`${folder}/`, '');
  return JSON.parse(shorter);
};

const isInstalled = (): boolean => {
  try {
    createRequire(import.meta.url).resolve('sherpa-onnx-node');
    return true;
  } catch {
    return false;
  }
};

describe('layouts of models', () => {
  it('knows Whisper, and takes the smaller files where both are there', () => {
    const files = [
      'tiny-encoder.onnx',
      'tiny-encoder.int8.onnx',
      'tiny-decoder.onnx',
      'tiny-decoder.int8.onnx',
    ];
    expect(layoutOf(...files, 'tiny-tokens.txt')).toEqual({
      tokens: 'tiny-tokens.txt',
      whisper: {
        encoder: 'tiny-encoder.int8.onnx',
        decoder: 'tiny-decoder.int8.onnx',
        language: 'en',
        task: 'transcribe',
      },
    });
  });

  it('knows a transducer', () => {
    expect(layoutOf('encoder-1.onnx', 'decoder-1.onnx', 'joiner-1.onnx', 'tokens.txt')).toEqual({
      tokens: 'tokens.txt',
      transducer: { encoder: 'encoder-1.onnx', decoder: 'decoder-1.onnx', joiner: 'joiner-1.onnx' },
    });
  });

  it('knows Moonshine', () => {
    const files = [
      'preprocess.onnx',
      'encode.int8.onnx',
      'uncached_decode.int8.onnx',
      'cached_decode.int8.onnx',
    ];
    expect(layoutOf(...files, 'tokens.txt')).toEqual({
      tokens: 'tokens.txt',
      moonshine: {
        preprocessor: 'preprocess.onnx',
        encoder: 'encode.int8.onnx',
        uncachedDecoder: 'uncached_decode.int8.onnx',
        cachedDecoder: 'cached_decode.int8.onnx',
      },
    });
  });

  it.each([[[]], [['tokens.txt']], [['encoder.onnx', 'decoder.onnx']]])('finds no model in %j', (files) => {
    expect(() => layoutOf(...files)).toThrow(SpeechError);
  });
});

describe('without what it needs', () => {
  const sound = { samples: new Float32Array(16_000) };

  it.skipIf(isInstalled())('names the package that is missing (skipped where it is installed)', async () => {
    await expect(localRecogniser(folderWith(), 'en').hear(sound, expected())).rejects.toMatchObject({
      fault: 'notInstalled',
    });
  });

  it('no engine hears nothing and says so', async () => {
    await expect(none.hear(sound, expected())).rejects.toMatchObject({ fault: 'off' });
    await none.close();
  });
});
