// Utterances read per second, over all sentences of the language tests.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse as parseYaml } from 'yaml';
import { plainListener } from '../../src/app/voice.ts';
import { parse } from '../../src/language/parse.ts';
import { SETTINGS, voice } from './kitchen.ts';
import { median, microseconds, percentile, round } from './measure.ts';

const ROUNDS = 9;
const SENTENCES = join('tests', 'language', 'sentences', 'en');

export function measureParse(): { utterancesPerSecond: number; p99Us: number } {
  const lines = allLines();
  const listener = plainListener(voice.language, SETTINGS);
  const rates: number[] = [];
  const slowest: number[] = [];
  for (let turn = 0; turn < ROUNDS; turn += 1) {
    const times: number[] = [];
    const from = process.hrtime.bigint();
    for (const line of lines) {
      const begin = process.hrtime.bigint();
      parse(listener, line, { answering: false });
      times.push(microseconds(begin));
    }
    rates.push((lines.length / microseconds(from)) * 1e6);
    slowest.push(percentile(times, 0.99));
  }
  return { utterancesPerSecond: round(median(rates)), p99Us: round(median(slowest), 1) };
}

function allLines(): readonly string[] {
  return readdirSync(SENTENCES).flatMap((file) => {
    const rows = parseYaml(readFileSync(join(SENTENCES, file), 'utf8')) as readonly {
      typed?: string;
      said?: string;
      unit?: string;
    }[];
    return rows.flatMap(({ typed, said, unit }) => (unit === 'kg' ? [] : [typed ?? said ?? '']));
  });
}
