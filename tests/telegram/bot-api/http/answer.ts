// What goes back over the wire: the outcome, or what a fault makes of it.
import type { ServerResponse } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, type FaultAnswer, takesEffect } from '../faults/faults.ts';
import type { Answered } from '../log.ts';

export interface Outcome {
  readonly status: number;
  readonly body: unknown;
}

const NAMES: Readonly<Record<number, string>> = {
  401: 'Unauthorized',
  403: 'Forbidden: bot was blocked by the user',
  404: 'Not Found',
  409: 'Conflict: terminated by other getUpdates request; make sure that only one bot instance is running',
  500: 'Internal Server Error',
  502: 'Bad Gateway',
  503: 'Service Unavailable',
  504: 'Gateway Timeout',
};

/** What the caller got, for the log. Without a fault the outcome is always there. */
export async function writeAnswer(
  response: ServerResponse,
  fault: Fault | undefined,
  outcome: Outcome | undefined,
): Promise<Answered> {
  if (fault === undefined) return write(response, outcome ?? errorOutcome({ kind: 'error', code: 500 }));
  const { answer } = fault;
  switch (answer.kind) {
    case 'error':
      return write(response, errorOutcome(answer));
    case 'html':
      return writeHtml(response, answer.code);
    case 'truncated':
      return writeTruncated(response, outcome ?? { status: 200, body: { ok: true, result: true } });
    case 'mute':
      // The caller, or the end of the server, closes the connection.
      return { kind: 'mute' };
    case 'drop':
      response.socket?.destroy();
      return { kind: 'dropped' };
    case 'late':
      if (takesEffect(fault)) await pause(answer.milliseconds);
      return write(response, outcome ?? errorOutcome({ kind: 'error', code: 500 }));
  }
}

function write(response: ServerResponse, { status, body }: Outcome): Answered {
  if (response.destroyed) return { kind: 'gone', status, body };
  const { bytes, type } = encoded(body);
  response.writeHead(status, { 'content-type': type, 'content-length': bytes.length });
  response.end(bytes);
  return { kind: 'answered', status, body: loggable(body) };
}

function encoded(body: unknown): { readonly bytes: Uint8Array; readonly type: string } {
  return body instanceof Uint8Array
    ? { bytes: body, type: 'application/octet-stream' }
    : { bytes: Buffer.from(JSON.stringify(body)), type: 'application/json' };
}

const loggable = (body: unknown): unknown => (body instanceof Uint8Array ? { size: body.length } : body);

function writeHtml(response: ServerResponse, code: number): Answered {
  response.writeHead(code, { 'content-type': 'text/html' });
  response.end(`<html><head><title>${code} ${NAMES[code] ?? ''}</title></head><body></body></html>`);
  return { kind: 'html', status: code };
}

/** The header names the whole length, half of it comes, and the connection ends. */
function writeTruncated(response: ServerResponse, { status, body }: Outcome): Answered {
  const { bytes, type } = encoded(body);
  response.writeHead(status, { 'content-type': type, 'content-length': bytes.length });
  response.write(bytes.subarray(0, Math.floor(bytes.length / 2)), () => response.socket?.destroy());
  return { kind: 'truncated', status, body: loggable(body) };
}

function errorOutcome(answer: FaultAnswer & { readonly kind: 'error' }): Outcome {
  const { code, retryAfter, migrateTo } = answer;
  const flood = `Too Many Requests: retry after ${String(retryAfter)}`;
  const description =
    answer.description ?? (retryAfter === undefined ? (NAMES[code] ?? 'Bad Request') : flood);
  const parameters = {
    ...(retryAfter === undefined ? {} : { retry_after: retryAfter }),
    ...(migrateTo === undefined ? {} : { migrate_to_chat_id: migrateTo }),
  };
  const more = Object.keys(parameters).length === 0 ? {} : { parameters };
  return { status: code, body: { ok: false, error_code: code, description, ...more } };
}
