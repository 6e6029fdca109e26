// The service in a process of its own, with the same controls: each returns a promise.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { BotApi, Controls } from './start.ts';
import type { Options } from './world/options.ts';

type Far<F> = F extends (...parameters: infer P) => infer R
  ? (...parameters: P) => Promise<Awaited<R>>
  : never;

export type RemoteControls = { readonly [Name in keyof Controls]: Far<Controls[Name]> };

export interface RemoteBotApi extends RemoteControls, Pick<BotApi, 'url' | 'token' | 'close'> {}

interface Greeting {
  readonly url: string;
  readonly token: string;
  readonly control: string;
}

const MAIN = fileURLToPath(new URL('main.ts', import.meta.url));

/** It lives until `close`, or until this process ends. A bundle must say where its source is. */
export async function spawnBotApi(options: Partial<Options> = {}, main = MAIN): Promise<RemoteBotApi> {
  const parameters = ['--import', 'tsx', main, JSON.stringify(options)];
  const child = spawn(process.execPath, parameters, { stdio: ['pipe', 'pipe', 'inherit'] });
  const greeting = await greetingOf(child);
  return remote(greeting, async () => {
    child.kill('SIGKILL');
    if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  });
}

async function greetingOf(child: ChildProcess): Promise<Greeting> {
  if (child.stdout === null) throw new Error('the service needs its output read');
  const reader = createInterface({ input: child.stdout });
  const line = await Promise.race([
    once(reader, 'line').then(([first]) => String(first)),
    once(reader, 'close').then(() => undefined),
  ]);
  if (line === undefined) throw new Error('the service did not start');
  return JSON.parse(line) as Greeting;
}

/** Every other name is a control. */
function remote({ url, token, control }: Greeting, close: () => Promise<void>): RemoteBotApi {
  const own: Readonly<Record<string, unknown>> = { url, token, close };
  return new Proxy(own, {
    get: (_, name) => {
      if (typeof name !== 'string' || name === 'then') return undefined;
      return own[name] ?? ((...parameters: readonly unknown[]) => order(control, name, parameters));
    },
  }) as unknown as RemoteBotApi;
}

async function order(control: string, name: string, parameters: readonly unknown[]): Promise<unknown> {
  const response = await fetch(control, { method: 'POST', body: JSON.stringify({ name, parameters }) });
  const answer = (await response.json()) as { readonly result?: unknown; readonly error?: string };
  if (answer.error !== undefined) throw new Error(answer.error);
  return answer.result;
}
