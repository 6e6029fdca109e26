// From a request to its parameters: query, JSON, form, multipart.
import type { IncomingMessage } from 'node:http';
import { badRequest, tooLarge } from '../refusal.ts';
import { readMultipart } from './multipart.ts';
import { isRecord, type Params } from './params.ts';

/** The documented limit for an upload is 50 MB; the rest of the form comes on top. */
const MOST_BYTES = 51 * 1024 * 1024;

export async function readParams(request: IncomingMessage, query: URLSearchParams): Promise<Params> {
  const body = await readBody(request);
  return { ...Object.fromEntries(query), ...parseBody(body, request.headers['content-type'] ?? '') };
}

async function readBody(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    // Read on: leaving the loop would cut the connection before the answer.
    if (size <= MOST_BYTES) chunks.push(chunk);
  }
  if (size > MOST_BYTES) throw tooLarge();
  return Buffer.concat(chunks);
}

function parseBody(body: Buffer, type: string): Params {
  if (body.length === 0) return {};
  if (type.startsWith('application/json')) return parseJson(body);
  if (type.startsWith('application/x-www-form-urlencoded'))
    return Object.fromEntries(new URLSearchParams(body.toString()));
  const boundary = /^multipart\/form-data\s*;.*?boundary="?([^";]+)"?/i.exec(type)?.[1];
  if (boundary !== undefined) return readMultipart(body, boundary);
  // The service leaves a body of an unknown type unread.
  return {};
}

function parseJson(body: Buffer): Params {
  try {
    const value: unknown = JSON.parse(body.toString());
    if (isRecord(value)) return value;
  } catch {
    // Answered below, like JSON that is no object.
  }
  throw badRequest("can't parse JSON object");
}
