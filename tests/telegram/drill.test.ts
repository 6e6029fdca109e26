// The drill of docs/deploying.md, "Backup": a copy made under load, the bot killed, the copy put in a new place and used.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { scratchFolder } from '../storage/scratch.ts';
import { startBotApi } from './bot-api/start.ts';
import { spawnBot } from './running.ts';

type Environment = Readonly<Record<string, string>>;

async function npm(command: string, environment: Environment): Promise<string> {
  const [name = '', ...rest] = command.split(' ');
  const child = spawn('npm', ['run', '-s', name, '--', ...rest], {
    env: { ...process.env, KITCHEN_TIMEZONE: 'UTC', ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (output += text));
  await once(child, 'close');
  expect(child.exitCode).toBe(0);
  return output;
}

const TABLES = [
  'message',
  'fact',
  'test_row',
  'memory_row',
  'pool_row',
  'member',
  'inbox',
  'outbox',
] as const;

function contentOf(path: string): Readonly<Record<string, readonly unknown[]>> {
  const db = new Database(path, { readonly: true });
  const rows = TABLES.map((table) => [table, db.prepare(`SELECT * FROM ${table} ORDER BY 1, 2`).all()]);
  db.close();
  return Object.fromEntries(rows) as Readonly<Record<string, readonly unknown[]>>;
}

function integrity(path: string): unknown {
  const db = new Database(path, { readonly: true });
  const verdict = db.pragma('integrity_check', { simple: true });
  db.close();
  return verdict;
}

it('brings a kitchen back from a copy that was made under load', async () => {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const folder = scratchFolder();
  const [kitchen, copy, restored] = ['kitchen', 'copy', 'restored'].map((name) => join(folder, `${name}.db`));
  if (kitchen === undefined || copy === undefined || restored === undefined) throw new Error('no paths');
  const environment = (path: string): Environment => ({
    DATABASE_URL: `sqlite:${path}`,
    TELEGRAM_BOT_TOKEN: api.token,
    TELEGRAM_API_ROOT: api.url,
    OWNER_TELEGRAM_ID: String(owner),
  });
  const bot = spawnBot(environment(kitchen));
  api.say({ from: owner, text: 'ribeye 14.2 lb at 7.40' });
  await api.awaitCalls({ method: 'sendMessage' }, 1);
  api.say({ from: owner, text: 'trim 1.1' });
  await api.awaitCalls({ method: 'editMessageText' }, 1);
  // What waits to be sent is in the copy too.
  const held = api.fail({ method: 'editMessageText', when: { kind: 'always' }, answer: { kind: 'error', code: 429, retryAfter: 2 } }); // prettier-ignore
  const load = { on: true };
  const talking = (async () => {
    for (let number = 1; load.on && number <= 50; number += 1) {
      api.say({ from: owner, text: `note number ${number} of the shift` });
      await wait(50);
    }
  })();
  await api.awaitCalls({ method: 'editMessageText' }, 2);

  // 1. Copy.
  expect(await npm(`backup ${copy}`, environment(kitchen))).toContain(copy);
  load.on = false;
  await talking;

  // 2. The machine is gone.
  await bot.kill('SIGKILL');
  api.heal(held);
  const later = contentOf(kitchen);
  const then = contentOf(copy);

  // 3. Look at the copy, in a new place.
  copyFileSync(copy, restored);
  expect(integrity(restored)).toBe('ok');
  expect(contentOf(restored)).toEqual(then);
  for (const table of ['message', 'fact'] as const)
    expect(later[table]).toEqual(expect.arrayContaining([...(then[table] ?? [])]));
  expect(then['fact']?.length).toBeGreaterThan(2);
  expect(then['outbox']?.length).toBeGreaterThan(0);
  expect(then['member']).toEqual(later['member']);

  // 4. Compute it anew.
  expect(await npm('rebuild', environment(restored))).toMatch(
    /^\d+ facts read\. The read models were right\.\n$/,
  );

  // 5. Start on it, and ask.
  const again = spawnBot(environment(restored));
  api.say({ from: owner, text: 'where are we' });
  await expect
    .poll(() => api.seenFromBot(owner).map(({ text }) => text), { timeout: 20_000 })
    .toContainEqual(expect.stringMatching(/ribeye[\s\S]*14\.2 lb[\s\S]*trim/i));
  await expect.poll(() => contentOf(restored)['outbox'], { timeout: 20_000 }).toEqual([]);
  expect(await again.kill('SIGTERM')).toBe(0);
  expect(contentOf(restored)['fact']?.slice(0, then['fact']?.length)).toEqual(then['fact']);
});

it('is written down as it is done', () => {
  const page = readFileSync('docs/deploying.md', 'utf8');
  for (const step of [
    'npm run -s backup -- ',
    'npm run -s rebuild',
    'where are we',
    'The read models were right',
  ])
    expect(page).toContain(step);
});
