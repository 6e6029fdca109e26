// The service as a process of its own, for tests that kill the bot: `main.ts OPTIONS`, with the options as JSON.
// Writes one line of JSON, {url, token, control}, then obeys POSTs of {name, parameters} at `control`.
import type { IncomingMessage, ServerResponse } from 'node:http';
import { json } from 'node:stream/consumers';
import { listen } from './http/listen.ts';
import { startBotApi, type BotApi } from './start.ts';
import type { Options } from './world/options.ts';

interface Order {
  readonly name: string;
  readonly parameters: readonly unknown[];
}

const api = await startBotApi(JSON.parse(process.argv[2] ?? '{}') as Partial<Options>);
const control = await listen((request, response) => {
  void obey(api, request, response);
}, 0);
console.log(JSON.stringify({ url: api.url, token: api.token, control: `http://127.0.0.1:${control.port}` }));
// A test that ends, however it ends, closes the pipe: nothing may stay behind.
process.stdin.resume().on('end', () => process.exit());

async function obey(server: BotApi, request: IncomingMessage, response: ServerResponse): Promise<void> {
  try {
    const result = await carryOut(server, (await json(request)) as Order);
    response.end(JSON.stringify({ result }));
  } catch (error) {
    response.end(JSON.stringify({ error: error instanceof Error ? error.message : String(error) }));
  }
}

function carryOut(server: BotApi, { name, parameters }: Order): unknown {
  const act: unknown = server[name as keyof BotApi];
  if (!isControl(act)) throw new Error(`no control ${name}`);
  return act(...parameters);
}

const isControl = (value: unknown): value is (...parameters: readonly unknown[]) => unknown =>
  typeof value === 'function';
