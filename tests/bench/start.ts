// From the start of the program to its first reply, as `npm start` starts it.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { median, microseconds, round } from './measure.ts';

const ROUNDS = 7;

export async function measureStart(folder: string): Promise<number> {
  const times: number[] = [];
  for (let cycle = 0; cycle < ROUNDS; cycle += 1) times.push(await firstReply(join(folder, 'start.db')));
  return round(median(times) / 1000);
}

async function firstReply(path: string): Promise<number> {
  const begin = process.hrtime.bigint();
  const child = spawn(process.execPath, [join('src', 'launch.js')], {
    env: { ...process.env, DATABASE_URL: `sqlite:${path}` },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  child.stdin.end('where are we\n');
  await once(child.stdout, 'data');
  const time = microseconds(begin);
  await once(child, 'exit');
  return time;
}
