// The HTML style of formatting: the documented tags become entities, anything else is refused.
import type { MessageEntity } from 'grammy/types';
import { badRequest } from '../refusal.ts';
import type { Marked } from './marked.ts';

const STYLES = new Map<string, MessageEntity['type']>([
  ['b', 'bold'],
  ['strong', 'bold'],
  ['i', 'italic'],
  ['em', 'italic'],
  ['u', 'underline'],
  ['ins', 'underline'],
  ['s', 'strikethrough'],
  ['strike', 'strikethrough'],
  ['del', 'strikethrough'],
  ['tg-spoiler', 'spoiler'],
  ['span', 'spoiler'],
  ['a', 'text_link'],
  ['code', 'code'],
  ['pre', 'pre'],
  ['blockquote', 'blockquote'],
]);
const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };

interface Open {
  readonly tag: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly offset: number;
}

interface Reading {
  readonly source: string;
  at: number;
  text: string;
  readonly open: Open[];
  readonly entities: MessageEntity[];
}

export function parseHtml(source: string): Marked {
  const reading: Reading = { source, at: 0, text: '', open: [], entities: [] };
  while (reading.at < source.length) step(reading);
  const unclosed = reading.open.at(-1);
  if (unclosed !== undefined)
    throw unparsable(`Can't find end tag corresponding to start tag "${unclosed.tag}"`);
  return { text: reading.text, entities: reading.entities };
}

function step(reading: Reading): void {
  if (reading.source[reading.at] === '<') readTag(reading);
  else if (reading.source[reading.at] === '&') readReference(reading);
  else readPlain(reading);
}

function readPlain(reading: Reading): void {
  const next = reading.source.slice(reading.at).search(/[<&]/);
  const end = next < 0 ? reading.source.length : reading.at + next;
  reading.text += reading.source.slice(reading.at, end);
  reading.at = end;
}

function readReference(reading: Reading): void {
  const found = match(reading, /&(?:(lt|gt|amp|quot)|#(\d{1,7})|#x([0-9a-f]{1,6}));/iy);
  // What is no reference is text: a lone ampersand is no error.
  reading.at += found?.[0].length ?? 1;
  reading.text += found === undefined ? '&' : character(found);
}

function character([whole, name, decimal, hexadecimal]: RegExpExecArray): string {
  if (name !== undefined) return NAMED[name.toLowerCase()] ?? whole;
  const point = decimal === undefined ? parseInt(hexadecimal ?? '0', 16) : Number(decimal);
  return point > 0 && point <= 0x10ffff ? String.fromCodePoint(point) : whole;
}

function readTag(reading: Reading): void {
  const found = match(reading, /<(\/?)([^\s<>/]*)((?:[^<>"']|"[^"]*"|'[^']*')*)>/y);
  if (found === undefined) throw unparsable(`Unclosed start tag at byte offset ${byteOffset(reading)}`);
  const [whole, slash, name = '', rest = ''] = found;
  if (slash === '/') closeTag(reading, name.toLowerCase());
  else openTag(reading, name.toLowerCase(), attributesOf(rest));
  reading.at += whole.length;
}

function openTag(reading: Reading, tag: string, attributes: ReadonlyMap<string, string>): void {
  const at = byteOffset(reading);
  if (!STYLES.has(tag)) throw unparsable(`Unsupported start tag "${tag}" at byte offset ${at}`);
  if (tag === 'span' && attributes.get('class') !== 'tg-spoiler')
    throw unparsable(`Tag "span" must have class "tg-spoiler" at byte offset ${at}`);
  reading.open.push({ tag, attributes, offset: reading.text.length });
}

function closeTag(reading: Reading, tag: string): void {
  const opened = reading.open.pop();
  const at = byteOffset(reading);
  if (opened === undefined) throw unparsable(`Unexpected end tag at byte offset ${at}`);
  // "</>" closes whatever is open.
  if (tag !== '' && tag !== opened.tag)
    throw unparsable(
      `Unmatched end tag at byte offset ${at}, expected "</${opened.tag}>", found "</${tag}>"`,
    );
  const length = reading.text.length - opened.offset;
  if (length > 0) reading.entities.push(...entityOf(reading, opened, length));
}

function entityOf(reading: Reading, { tag, attributes, offset }: Open, length: number): MessageEntity[] {
  const type = STYLES.get(tag);
  const common = { offset, length };
  if (type === 'text_link') {
    const url = attributes.get('href') ?? reading.text.slice(offset);
    return [{ ...common, type, url }];
  }
  if (tag === 'blockquote' && attributes.has('expandable'))
    return [{ ...common, type: 'expandable_blockquote' }];
  const language = /^language-(.+)/.exec(attributes.get('class') ?? '')?.[1];
  // A code inside a pre only names the language.
  if (tag === 'code' && language !== undefined && reading.open.at(-1)?.tag === 'pre')
    return [{ ...common, type: 'pre', language }];
  return [{ ...common, type } as MessageEntity];
}

function attributesOf(rest: string): ReadonlyMap<string, string> {
  const pairs = rest.matchAll(/([\w-]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+)))?/g);
  return new Map(Array.from(pairs, ([, name = '', a, b, c]) => [name.toLowerCase(), a ?? b ?? c ?? '']));
}

function match(reading: Reading, pattern: RegExp): RegExpExecArray | undefined {
  pattern.lastIndex = reading.at;
  return pattern.exec(reading.source) ?? undefined;
}

const byteOffset = (reading: Reading): number => Buffer.byteLength(reading.source.slice(0, reading.at));

const unparsable = (why: string): Error => badRequest(`can't parse entities: ${why}`);
