// The engine behind a server: what it sends, how it reads what comes, and a server that is busy, mute, broken or rude.
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { SpeechError } from '../../src/app/ports/speech.ts';
import { httpRecogniser } from '../../src/speech/http/engine.ts';
import { recogniserContract } from '../app/ports/speech.contract.ts';
import { expected } from './given.ts';

type Handle = (body: string, response: ServerResponse, request: IncomingMessage) => void;

async function serverWith(handle: Handle): Promise<string> {
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      handle(Buffer.concat(chunks).toString('latin1'), response, request);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

const json = (response: ServerResponse, answer: unknown): void => {
  response.setHeader('content-type', 'application/json');
  response.end(JSON.stringify(answer));
};
const SOUND = { samples: new Float32Array(16_000).fill(0.25) };
const hear = async (url: string, timeoutMs = 5000) =>
  httpRecogniser({ url, language: 'en', timeoutMs, pauseMs: 1 }).hear(SOUND, expected());
const faultOf = async (promise: Promise<unknown>): Promise<unknown> => {
  const error: unknown = await promise.catch((reason: unknown) => reason);
  return error instanceof SpeechError ? error.fault : error;
};

describe('what is sent', () => {
  it('is a WAV file, the language and our words as a prompt, to the common path', async () => {
    const seen: { body: string; url: string | undefined }[] = [];
    const url = await serverWith((body, response, { url: path }) => {
      seen.push({ body, url: path });
      json(response, { text: 'Trim, 1.1 pounds.' });
    });
    expect((await hear(url)).words).toBe('trim, 1.1 pounds'.replace(',', ''));
    const [{ body, url: path } = { body: '', url: '' }] = seen;
    expect(path).toBe('/v1/audio/transcriptions');
    for (const part of [
      'name="file"',
      'RIFF',
      'name="language"',
      'name="prompt"',
      'silverskin',
      'name="model"',
    ])
      expect(body).toContain(part);
  });

  it('goes to the very path that is named', async () => {
    const paths: (string | undefined)[] = [];
    const url = await serverWith((_, response, { url: path }) => {
      paths.push(path);
      json(response, { text: 'done' });
    });
    await hear(`${url}/asr/audio/transcriptions`);
    await hear(`${url}/inside/`);
    expect(paths).toEqual(['/asr/audio/transcriptions', '/inside/v1/audio/transcriptions']);
  });
});

describe('how surely it was heard', () => {
  it.each([
    [
      'the server is sure',
      { text: 'done', segments: [{ avg_logprob: -0.02, no_speech_prob: 0.01 }] },
      0.96,
      1,
    ],
    [
      'the server is nearly sure: it waits for a word',
      { text: 'done', segments: [{ avg_logprob: -0.05, no_speech_prob: 0.01 }] },
      0.45,
      0.84,
    ],
    [
      'the worst segment counts',
      { text: 'a b', segments: [{ avg_logprob: -0.05 }, { avg_logprob: -1 }] },
      0,
      0.4,
    ],
    [
      'probably no speech',
      { text: 'thank you', segments: [{ avg_logprob: -0.1, no_speech_prob: 0.9 }] },
      0,
      0.2,
    ],
    ['the server tells nothing: every entry waits for a word', { text: 'trim 1.1' }, 0.45, 0.84],
    ['no words', { text: '' }, 0, 0],
  ])('%s', async (_, answer, least, most) => {
    const url = await serverWith((__, response) => {
      json(response, answer);
    });
    const { confidence } = await hear(url);
    expect(confidence).toBeGreaterThanOrEqual(least);
    expect(confidence).toBeLessThanOrEqual(most);
  });
});

describe('a server in trouble', () => {
  it('is asked again while it is busy, and answers then', async () => {
    let count = 0;
    const url = await serverWith((_, response) => {
      count += 1;
      if (count < 3) response.writeHead(count === 1 ? 503 : 429).end();
      else json(response, { text: 'done' });
    });
    expect((await hear(url)).words).toBe('done');
    expect(count).toBe(3);
  });

  it('is given up after three tries', async () => {
    let count = 0;
    const url = await serverWith((_, response) => {
      count += 1;
      response.writeHead(500).end();
    });
    expect(await faultOf(hear(url))).toBe('unavailable');
    expect(count).toBe(3);
  });

  it.each([
    ['refuses', 'nonsense', (response: ServerResponse) => response.writeHead(400).end()],
    ['answers no JSON', 'nonsense', (response: ServerResponse) => response.end('<html>')],
    ['answers without text', 'nonsense', (response: ServerResponse) => response.end('{"words": 1}')],
    ['never answers', 'timeout', () => undefined],
  ])('that %s is classed', async (_, fault, handle) => {
    let count = 0;
    const url = await serverWith((__, response) => {
      count += 1;
      handle(response);
    });
    expect(await faultOf(hear(url, 300))).toBe(fault);
    expect(count).toBe(1);
  });

  it('that is not there is unavailable', async () => {
    expect(await faultOf(hear('http://127.0.0.1:1'))).toBe('unavailable');
  });
});

/** Stands in for a server's model: it hears the length of what is sent, and knows the two sentences of the contract by it. */
const LENGTHS = new Map([
  [20_000, 'Fat three and a half pounds.'],
  [30_000, 'Bone two point nine.'],
]);
const address = { url: '' };
const standIn = createServer((request, response) => {
  let bytes = 0;
  request.on('data', (chunk: Buffer) => (bytes += chunk.length));
  request.on('end', () => {
    const said = [...LENGTHS].find(([samples]) => Math.abs(bytes - samples * 2) < 4000)?.[1] ?? '';
    json(response, { text: said, segments: [{ avg_logprob: -0.1 }] });
  });
}).listen(0, '127.0.0.1');
standIn.unref();
await new Promise((resolve) => standIn.once('listening', resolve));
address.url = `http://127.0.0.1:${(standIn.address() as AddressInfo).port}`;

recogniserContract('http', {
  open: () => httpRecogniser({ url: address.url, language: 'en' }),
  spoken: (words) => {
    const length = [...LENGTHS].find(([, said]) => said.toLowerCase() === `${words}.`)?.[0] ?? 0;
    return Promise.resolve({ samples: new Float32Array(length) });
  },
  expected: expected(),
});
