// `npm run bench -- --json`: how fast, how large. Each figure is the median of several rounds in one run.
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { measureGrowth } from './growth.ts';
import { measureMemory, reportMemory } from './memory.ts';
import { measureParse } from './parse.ts';
import { measureStart } from './start.ts';
import { measureTelegram } from './telegram.ts';
import { measureTurn } from './turn.ts';

const [command, path] = process.argv.slice(2);
if (command === '--report-memory') await reportMemory(path ?? '');
else await bench();

async function bench(): Promise<void> {
  // Beside the project, not in a folder that may lie in memory: commits are what is measured.
  const folder = mkdtempSync(join(process.cwd(), '.build-bench-data-'));
  try {
    const machine = {
      cpu: cpus()[0]?.model ?? '',
      cores: cpus().length,
      memoryGb: Math.round(totalmem() / 2 ** 30),
      node: process.version,
    };
    const parse = measureParse();
    const turn = await measureTurn(folder);
    const growth = await measureGrowth(folder);
    const memoryMb = await measureMemory(folder);
    const startMs = await measureStart(folder);
    const telegram = await measureTelegram(folder);
    const result = { machine, parse, turn, growth, memoryMb, startMs, telegram };
    console.log(process.argv.includes('--json') ? JSON.stringify(result) : JSON.stringify(result, null, 2));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
