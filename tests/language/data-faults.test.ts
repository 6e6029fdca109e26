// A fault in the data of a language stops the start, with a message that names the file and the line.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { loadVoice } from '../../src/app/voice.ts';
import { DataFault } from '../../src/language/sentences.ts';
import { INTENTS } from './english.ts';

interface Fault {
  readonly title: string;
  /** The file, from the folder of all languages. */
  readonly file: string;
  /** The line that is put in; of a new file its whole text. */
  readonly line: string;
  /** Put in place of the first line that begins so; else the line is put at the end. */
  readonly instead?: string;
  /** What the message must say beside the place. */
  readonly says?: RegExp;
  /** How many lines later a parser may notice it (an open quote). */
  readonly noticed?: number;
}

const WEIGH = 'en/sentences/weigh.yaml';

const faults: readonly Fault[] = [
  { title: 'a slot that the intent does not have', file: WEIGH, line: '- say: "shade {colour}"', says: /colour/ },
  { title: 'a slot of an unknown kind', file: WEIGH, line: '- say: "shade {weight:stones}"', says: /stones/ },
  { title: 'a slot that is no slot', file: WEIGH, line: '- say: "shade {we ight}"', says: /we ight/ },
  { title: 'an unknown shared rule', file: WEIGH, line: '- say: "<nowhere> {weight}"', says: /nowhere/ },
  { title: 'a bracket that is not closed', file: WEIGH, line: '- say: "[shade {part} {weight}"', says: /closed/ },
  { title: 'a group that is not closed', file: WEIGH, line: '- say: "(shade|hue {part} {weight}"', says: /closed/ },
  { title: 'a bracket that closes nothing', file: WEIGH, line: '- say: "shade] {part} {weight}"', says: /closes nothing/ },
  { title: 'a bracket closed by another', file: WEIGH, line: '- say: "[shade) {part} {weight}"' },
  { title: 'an unknown condition', file: WEIGH, line: '- {say: "shade {part}", when: [sometimes]}' },
  { title: 'an unknown key of a sentence', file: WEIGH, line: '- {says: "shade {part}"}' },
  { title: 'a fixed value for a slot that the intent does not have', file: WEIGH, line: '- {say: "shade", set: {colour: red}}', says: /colour/ }, // prettier-ignore
  { title: 'a reading as an unknown intent', file: WEIGH, line: '- {say: "shade", ask: which, readings: {one: dance}}', says: /dance/ }, // prettier-ignore
  { title: 'a sentence without words', file: WEIGH, line: '- {say: []}' },
  { title: 'broken YAML in sentences', file: WEIGH, line: '- {say: "shade', noticed: 1 },
  { title: 'a file of sentences for an unknown intent', file: 'en/sentences/dance.yaml', line: '- say: "dance"', says: /dance/ },
  { title: 'sentences that are no list', file: 'en/sentences/help.yaml', line: 'say: help', instead: '' },
  { title: 'a number word that stands for no number', file: 'en/numbers.yaml', line: '  seven: "seven"', instead: '  seven:' },
  { title: 'a number word over 99', file: 'en/numbers.yaml', line: '  seven: 700', instead: '  seven:' },
  { title: 'an unknown decimal mark', file: 'en/numbers.yaml', line: "decimalMark: ';'", instead: 'decimalMark:' },
  { title: 'a fraction that is none', file: 'en/numbers.yaml', line: '  third: "a third"', instead: '  third:' },
  { title: 'broken YAML in the number words', file: 'en/numbers.yaml', line: '  seven: [7', instead: '  seven:', noticed: 1 },
  { title: 'a unit whose words are no list', file: 'en/units.yaml', line: '  kg: kilo', instead: '  kg:' },
  { title: 'a name whose words are no list', file: 'en/names.yaml', line: '  striploin: strip', instead: '  striploin:' },
  { title: 'a shared rule that is no text', file: 'en/lexicon.yaml', line: '  each: [each]', instead: '  each:' },
  { title: 'a limit that is no whole number', file: 'catalogue.yaml', line: '  maxCount: many', instead: '  maxCount:' },
]; // prettier-ignore

/** Found, but without a line or even without the file. A fix moves them up. */
const placeless: readonly Fault[] = [
  { title: 'a fraction over zero', file: 'en/numbers.yaml', line: '  third: "1/0"', instead: '  third:' },
  { title: 'an unknown list of words', file: 'en/lexicon.yaml', line: 'swearwords: [darn]' },
  { title: 'look-alikes that are no words', file: 'en/lookalikes.yaml', line: '[{abby: 1}]', instead: '[' },
  { title: 'a usual weight that is no decimal', file: 'catalogue.yaml', line: '  maxReceivedLb: "2,000"', instead: '  maxReceivedLb:' },
]; // prettier-ignore

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** A copy of all data in which one file differs. */
function copyWith(file: string, change: (text: string) => string): string {
  const folder = mkdtempSync(join(tmpdir(), 'intents-'));
  folders.push(folder);
  cpSync(INTENTS, folder, { recursive: true });
  const path = join(folder, file);
  writeFileSync(path, change(existing(path)));
  return folder;
}

function existing(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/** The text with the faulty line, and the number of that line. */
function spoil(text: string, { line, instead }: Fault): { text: string; at: number } {
  const lines = text.trimEnd() === '' ? [] : text.trimEnd().split('\n');
  if (instead === '') return { text: `${line}\n`, at: 1 };
  const place = instead === undefined ? lines.length : lines.findIndex((each) => each.startsWith(instead));
  if (place < 0) throw new Error(`no line begins with "${instead ?? ''}"`);
  const rest = instead === '[' ? [] : lines.slice(place + 1);
  return { text: [...lines.slice(0, place), line, ...rest, ''].join('\n'), at: place + 1 };
}

function faultOf(folder: string): unknown {
  try {
    loadVoice(folder, 'en');
  } catch (error) {
    return error;
  }
  return undefined;
}

function expectNamed(fault: Fault): void {
  const place = { at: 0 };
  const folder = copyWith(fault.file, (text) => {
    const spoilt = spoil(text, fault);
    place.at = spoilt.at;
    return spoilt.text;
  });
  const found = faultOf(folder);
  expect(found).toBeInstanceOf(DataFault);
  const { message } = found as DataFault;
  const places = [0, fault.noticed ?? 0].map((later) => `${join(folder, fault.file)}:${place.at + later}: `);
  expect(
    places.some((each) => message.startsWith(each)),
    `${message} (should be line ${place.at})`,
  ).toBe(true);
  if (fault.says !== undefined) expect(message).toMatch(fault.says);
}

test.each(faults)('$title', expectNamed);
test.fails.each(placeless)('$title: not named yet', expectNamed);

test('the fault is found in the line of a list in which it stands', () => {
  const folder = copyWith('en/sentences/help.yaml', () => '- say:\n    - help\n    - "[help"\n');
  const found = faultOf(folder);
  expect(found).toBeInstanceOf(DataFault);
  expect((found as DataFault).message).toContain(`${join(folder, 'en/sentences/help.yaml')}:3: `);
});

test('shared rules that refer to each other are no endless circle', () => {
  const folder = copyWith(
    'en/lexicon.yaml',
    (text) => `${text.trimEnd()}\n  chicken: "<egg>"\n  egg: "<chicken>"\n`,
  );
  const path = join(folder, WEIGH);
  const sentences = readFileSync(path, 'utf8').trimEnd();
  writeFileSync(path, `${sentences}\n- say: "<chicken>"\n`);
  expect((faultOf(folder) as DataFault).message).toContain(`${path}:${sentences.split('\n').length + 1}: `);
});

test.each(['numbers', 'units', 'names', 'lexicon', 'lookalikes'])('a missing %s.yaml is named', (name) => {
  const folder = copyWith(`en/${name}.yaml`, (text) => text);
  rmSync(join(folder, `en/${name}.yaml`));
  expect(String(faultOf(folder))).toContain(`${name}.yaml`);
});

test('data without a fault loads', () => {
  expect(faultOf(copyWith(WEIGH, (text) => text))).toBeUndefined();
});
