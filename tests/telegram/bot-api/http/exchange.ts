// One request, start to end: read, perhaps met by a fault, carried out, answered, logged.
import type { IncomingMessage, ServerResponse } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, nextFault, takesEffect } from '../faults/faults.ts';
import { closeCall, openCall, type Call } from '../log.ts';
import { downloadOf } from '../methods/media.ts';
import { methodNamed } from '../methods/methods.ts';
import { isRefusal, notFound, refusalBody, unauthorized } from '../refusal.ts';
import type { World } from '../world/world.ts';
import { type Outcome, writeAnswer } from './answer.ts';
import { readParams } from './body.ts';
import { integer, type Params, withoutBytes } from './params.ts';

interface Route {
  readonly token: string;
  /** `file` for a download. */
  readonly method: string;
  readonly path: string;
}

interface Asked {
  readonly route: Route;
  readonly params: Params;
  readonly call: Call;
}

export async function exchange(
  world: World,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const gone = new AbortController();
  response.on('close', () => {
    gone.abort();
  });
  const url = new URL(request.url ?? '/', 'http://service');
  const route = routeOf(url.pathname);
  const read = await orRefused(() => readParams(request, url.searchParams));
  // Hung up before the request was whole: nothing was asked.
  if (!request.complete) return;
  const params = 'value' in read ? read.value : {};
  const asked = { route, params, call: open(world, route, params) };
  const refused = 'value' in read ? undefined : read.outcome;
  const outcome = refused ?? (await outcomeOf(world, asked, gone.signal));
  closeCall(world.log, asked.call, await writeAnswer(response, asked.call.fault, outcome));
}

function routeOf(path: string): Route {
  const file = /^\/file\/bot([^/]+)\/(.+)$/.exec(path);
  if (file !== null) return { token: file[1] ?? '', method: 'file', path: file[2] ?? '' };
  const [, token = '', method = ''] = /^\/bot([^/]+)\/(\w+)$/.exec(path) ?? [];
  return { token, method, path: '' };
}

function open(world: World, { method, path }: Route, params: Params): Call {
  const chat = integer(params, 'chat_id');
  const fault = nextFault(world.faults, method, chat);
  const parameters = method === 'file' ? { path } : withoutBytes(params);
  return openCall(world.log, { method, parameters, chat, ...(fault === undefined ? {} : { fault }) });
}

/** Undefined where a fault keeps the call from being carried out. */
async function outcomeOf(world: World, asked: Asked, gone: AbortSignal): Promise<Outcome | undefined> {
  const { fault } = asked.call;
  if (fault !== undefined && !takesEffect(fault) && !(await isMerelyLate(fault))) return undefined;
  const outcome = await orRefused(() => perform(world, asked, gone));
  asked.call.took = 'value' in outcome;
  return 'value' in outcome ? { status: 200, body: outcome.value } : outcome.outcome;
}

/** A late call without an early effect is carried out after the wait, even for a caller that is gone by then. */
async function isMerelyLate({ answer }: Fault): Promise<boolean> {
  if (answer.kind !== 'late') return false;
  await pause(answer.milliseconds);
  return true;
}

async function perform(world: World, { route, params }: Asked, gone: AbortSignal): Promise<unknown> {
  if (!/^\d+:[\w-]+$/.test(route.token)) throw notFound();
  if (route.token !== world.options.token) throw unauthorized();
  if (route.method === 'file') return download(world, route.path);
  const method = methodNamed(route.method);
  if (method === undefined) throw notFound('method not found');
  return { ok: true, result: await method(world, params, gone) };
}

function download(world: World, path: string): Uint8Array {
  const bytes = downloadOf(world, path);
  if (bytes === undefined) throw notFound();
  return bytes;
}

type Tried<T> = { readonly value: T } | { readonly outcome: Outcome };

async function orRefused<T>(attempt: () => Promise<T>): Promise<Tried<T>> {
  try {
    return { value: await attempt() };
  } catch (error) {
    return { outcome: refusedOutcome(error) };
  }
}

function refusedOutcome(error: unknown): Outcome {
  if (isRefusal(error)) return { status: error.code, body: refusalBody(error) };
  // A fault of this server, or a request that broke off: a test must see it, so it is no 4xx.
  const why = error instanceof Error ? error.message : String(error);
  return { status: 500, body: { ok: false, error_code: 500, description: `Internal Server Error: ${why}` } };
}
