// What a process takes that has opened a kitchen and answered one question: empty, and with 100,000 closed tests.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ask, openBench } from './kitchen.ts';
import { round } from './measure.ts';

export const measureMemory = (folder: string): Promise<{ idle: number; after100kTests: number }> =>
  Promise.resolve({
    idle: inChild(join(folder, 'idle.db')),
    after100kTests: inChild(join(folder, '100k.db')),
  });

function inChild(path: string): number {
  const child = spawnSync(process.execPath, [process.argv[1] ?? '', '--report-memory', path], {
    encoding: 'utf8',
  });
  if (child.status !== 0) throw new Error(child.stderr);
  return round(Number(child.stdout) / 2 ** 20, 1);
}

/** The child's side. */
export async function reportMemory(path: string): Promise<void> {
  const { store, table } = await openBench(path);
  await ask(table, 'one', "what's ribeye at");
  process.stdout.write(String(process.memoryUsage().rss));
  await store.close();
}
