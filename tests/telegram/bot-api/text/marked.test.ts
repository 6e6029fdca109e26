// Formatting and entities as the service reads them.
import { expect, it } from 'vitest';
import { parseHtml } from './html.ts';
import { readMarked } from './marked.ts';

const NAMES = { text: 'text', entities: 'entities' };

it.each([
  ['plain', 'plain', []],
  ['<b>trim</b> 1.1', 'trim 1.1', [{ type: 'bold', offset: 0, length: 4 }]],
  ['🥩 <i>x</i>', '🥩 x', [{ type: 'italic', offset: 3, length: 1 }]],
  ['&lt;b&gt; &amp; &quot;&#65;&#x42; &nbsp; &', '<b> & "AB &nbsp; &', []],
  [
    '<b>a<i>b</i></b>',
    'ab',
    [
      { type: 'italic', offset: 1, length: 1 },
      { type: 'bold', offset: 0, length: 2 },
    ],
  ],
  ['<a href="https://x.y">z</a>', 'z', [{ type: 'text_link', offset: 0, length: 1, url: 'https://x.y' }]],
  ['<blockquote expandable>q</blockquote>', 'q', [{ type: 'expandable_blockquote', offset: 0, length: 1 }]],
  ['<b></b>x', 'x', []],
])('reads %s', (source, text, entities) => {
  expect(parseHtml(source)).toEqual({ text, entities });
});

it.each([
  ['<b>x', 'Can\'t find end tag corresponding to start tag "b"'],
  ['<b>x</i>', 'Unmatched end tag at byte offset 4, expected "</b>", found "</i>"'],
  ['x</b>', 'Unexpected end tag at byte offset 1'],
  ['<h1>x</h1>', 'Unsupported start tag "h1" at byte offset 0'],
  ['ä < b > c', 'Unsupported start tag "" at byte offset 3'],
  ['trim < fat', 'Unclosed start tag at byte offset 5'],
  ['<span>x</span>', 'Tag "span" must have class "tg-spoiler" at byte offset 0'],
])('refuses %s', (source, why) => {
  expect(() => parseHtml(source)).toThrow(`Bad Request: can't parse entities: ${why}`);
});

it('moves entities with the text that it trims', () => {
  const marked = readMarked({ text: '  <b> trim </b> ', parse_mode: 'HTML' }, NAMES);
  expect(marked).toEqual({ text: 'trim', entities: [{ type: 'bold', offset: 0, length: 4 }] });
});

it('finds commands, names and addresses by itself', () => {
  const marked = readMarked({ text: '/start@blockhand_bot x @someone https://x.y 1/2 a@b' }, NAMES);
  expect(marked?.entities.map(({ type }) => type)).toEqual(['bot_command', 'mention', 'url']);
});

it('takes entities beside the text, within the text only', () => {
  const bold = { type: 'bold', offset: 0, length: 4 };
  expect(readMarked({ text: 'trim', entities: [bold] }, NAMES)?.entities).toEqual([bold]);
  expect(() => readMarked({ text: 'tri', entities: [bold] }, NAMES)).toThrow('UTF-16 offset 3');
});

it('drops what turns the writing direction, and other controls', () => {
  expect(readMarked({ text: 'a\u202eb\rc\u0000d' }, NAMES)?.text).toBe('abc d');
});

it('refuses a style that it does not know', () => {
  expect(() => readMarked({ text: 'x', parse_mode: 'MarkdownV2' }, NAMES)).toThrow('unsupported parse_mode');
});
