// A text with its entities, as the service keeps it: cleaned, trimmed, counted in UTF-16 units.
import type { MessageEntity } from 'grammy/types';
import { isRecord, list, type Params, text as textOf } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { detected } from './detected.ts';
import { parseHtml } from './html.ts';

export interface Marked {
  readonly text: string;
  readonly entities: readonly MessageEntity[];
}

/** The names of the two parameters: a text and a caption are read alike. */
export interface Names {
  readonly text: string;
  readonly entities: string;
}

/** Undefined where the parameter is absent or nothing is left of it. */
export function readMarked(params: Params, names: Names): Marked | undefined {
  const source = textOf(params, names.text);
  if (source === undefined) return undefined;
  const { text, entities } = trimmed(parsed(cleaned(source), params, names));
  return text === '' ? undefined : { text, entities: inOrder([...entities, ...detected(text, entities)]) };
}

function parsed(source: string, params: Params, names: Names): Marked {
  const mode = textOf(params, 'parse_mode') ?? '';
  // An empty list counts as none, so that a parse mode beside it still works.
  const given = list(params, names.entities) ?? [];
  if (given.length > 0) return { text: source, entities: given.map((entity) => checked(entity, source)) };
  if (mode === '') return { text: source, entities: [] };
  if (mode.toLowerCase() === 'html') return parseHtml(source);
  // Both Markdown styles exist in the service; nothing here writes them.
  throw badRequest('unsupported parse_mode');
}

/** Control characters become spaces, carriage returns and overrides of the writing direction go. */
function cleaned(source: string): string {
  // eslint-disable-next-line no-control-regex
  return source.replace(/[\r\u2028-\u202e]/g, '').replace(/[\0-\u0008\u000b-\u001f]/g, ' ');
}

function checked(entity: unknown, text: string): MessageEntity {
  if (!isRecord(entity) || typeof entity['type'] !== 'string')
    throw badRequest("can't parse MessageEntity: expected an object with a type");
  const { offset, length } = entity;
  if (!Number.isInteger(offset) || !Number.isInteger(length))
    throw badRequest("can't parse MessageEntity: offset and length must be integers");
  if (Number(offset) < 0 || Number(length) < 0 || Number(offset) + Number(length) > text.length)
    throw badRequest(`entity ends after the end of the text at UTF-16 offset ${String(text.length)}`);
  return entity as unknown as MessageEntity;
}

function trimmed({ text, entities }: Marked): Marked {
  const start = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  const kept = entities.map((entity) => {
    const from = Math.max(entity.offset, start);
    const to = Math.min(entity.offset + entity.length, end);
    return { ...entity, offset: from - start, length: to - from };
  });
  return { text: text.trim(), entities: kept.filter(({ length }) => length > 0) };
}

const inOrder = (entities: MessageEntity[]): MessageEntity[] =>
  entities.sort((one, other) => one.offset - other.offset || other.length - one.length);
