// The commands as a person starts them: processes of their own, on files of their own.
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { scratchFolder } from './storage/scratch.ts';

type Environment = Readonly<Record<string, string>>;

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const environmentWith = (more: Environment): NodeJS.ProcessEnv => ({
  ...process.env,
  KITCHEN_TIMEZONE: 'UTC',
  ...more,
});

async function run(
  command: readonly string[],
  { input = '', env = {} }: { input?: string; env?: Environment } = {},
): Promise<Ended> {
  const [program = '', ...args] = command;
  const child = spawn(program, args, { env: environmentWith(env) });
  const read: [string, string] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (read[0] += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (read[1] += text));
  child.stdin.on('error', () => undefined).end(input);
  const [status] = (await once(child, 'close')) as [number | null];
  return { status, out: read[0], err: read[1] };
}

const npm = (name: string, ...args: readonly string[]): readonly string[] => [
  'npm',
  'run',
  '-s',
  name,
  '--',
  ...args,
];
const kitchenIn = (folder: string): Environment => ({ DATABASE_URL: `sqlite:${join(folder, 'kitchen.db')}` });
const chat = (folder: string, ...said: readonly string[]): Promise<Ended> =>
  run(['npm', 'start', '-s'], { input: said.map((line) => `${line}\n`).join(''), env: kitchenIn(folder) });

function written(text: string): string {
  const path = join(scratchFolder(), 'shift.yaml');
  writeFileSync(path, text);
  return path;
}

interface Line {
  readonly text: string;
  readonly entries: readonly Readonly<Record<string, unknown>>[];
  readonly ask: string | null;
}

async function parsed(input: string, ...args: readonly string[]): Promise<readonly Line[]> {
  const { status, out, err } = await run(npm('parse', '--json', ...args), { input });
  expect([status, err]).toEqual([0, '']);
  return out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);
}

describe('parse', () => {
  it('writes one object a line, in order, for a blank line too', async () => {
    const lines = await parsed('trim 1.1\n\nwho took my knife\nfat 1 lb, lip 0.5\n');
    expect(lines).toEqual([
      {
        text: 'trim 1.1',
        entries: [{ kind: 'weigh', part: 'trim', weightLb: '1.1', mode: 'set' }],
        ask: null,
      },
      { text: '', entries: [], ask: null },
      { text: 'who took my knife', entries: [], ask: null },
      {
        text: 'fat 1 lb, lip 0.5',
        entries: [
          { kind: 'weigh', part: 'fat', weightLb: '1', mode: 'set' },
          { kind: 'weigh', part: 'lip', weightLb: '0.5', mode: 'set' },
        ],
        ask: null,
      },
    ]);
  });

  it('reads a last line without an end, and lines that end in the manner of other systems', async () => {
    expect((await parsed('done\r\nundo')).map(({ text, entries }) => [text, entries[0]?.kind])).toEqual([
      ['done', 'finish'],
      ['undo', 'undo'],
    ]);
  });

  it('takes a bare weight in the unit that is set', async () => {
    const [line] = await parsed('trim 0.45359237\n', '--unit', 'kg', '--spoken', '--lang', 'en');
    expect(line?.entries[0]?.weightLb).toBe('1');
  });

  it('asks for what an impossible line lacks, and records none of it', async () => {
    const [line] = await parsed('ribeye 14.2 at 74000\n');
    expect(line).toMatchObject({ entries: [], ask: expect.any(String) as string });
  });

  const shift = `
kitchen: {unit: lb, timezone: UTC}
turns:
  - {at: "2026-03-06T09:00", from: lead, typed: "ribeye 14.2 lb at 7.40"}
  - {from: lead, typed: "trim 1.1"}
  - {from: second, typed: "pork loin 9 lb at 2.85"}
  - {from: lead, typed: "trim 1.3"}
`;

  it('reads each line as the next turn after a shift, its standing question included, and keeps none', async () => {
    const lines = await parsed('add\nadd\nreplace\n', '--context', written(shift), '--from', 'lead');
    expect(lines.map(({ entries }) => entries[0])).toMatchObject([
      { part: 'trim', weightLb: '1.3', mode: 'add' },
      { part: 'trim', weightLb: '1.3', mode: 'add' },
      { part: 'trim', weightLb: '1.3', mode: 'set' },
    ]);
  });

  it('lets the question of one person alone where another speaks, and lapse with time', async () => {
    const context = ['--context', written(shift)];
    const [other] = await parsed('add\n', ...context, '--from', 'second');
    expect(other?.entries).toEqual([]);
    const [later] = await parsed('add\n', ...context, '--from', 'lead', '--now', '2026-03-06T10:00');
    expect(later?.entries).toEqual([]);
  });

  it.each([
    ['--unit', 'stone'],
    ['--lang', 'xx'],
    ['--nonsense'],
    ['stray'],
    ['--context'],
    ['--context', 'no-such-file.yaml'],
    ['--now', 'noon'],
  ])('exits with 2 and one line on %s %s', async (...args) => {
    const { status, out, err } = await run(npm('parse', '--json', ...args), { input: 'trim 1.1\n' });
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^[^\n]+\n$/);
  });

  it('reads ten thousand lines in seconds', { timeout: 60_000 }, async () => {
    const begun = performance.now();
    const lines = await parsed(
      Array.from({ length: 10_000 }, (_, at) => `trim ${(at % 97) + 1}.${at % 10}`).join('\n'),
    );
    expect(lines).toHaveLength(10_000);
    expect(performance.now() - begun).toBeLessThan(20_000);
  });
});

const bomb = `turns:
  - at: "2026-03-06T09:00"
    typed: &a "trim 1"
  - typed: "fat 1"
    b: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a,*a]
    c: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b,*b]
    d: [*c,*c,*c,*c,*c,*c,*c,*c,*c,*c]
`;

describe('replay', () => {
  const kitchen = 'kitchen: {timezone: UTC}\n';
  const first = '  - {at: "2026-03-06T09:00", typed: "trim 1"}\n';

  it('prints the conversation, or one object', async () => {
    const path = written(
      `${kitchen}turns:\n  - {at: "2026-03-06T09:00", from: lead, typed: "ribeye 14.2 lb at 7.40"}\n`,
    );
    const shown = await run(npm('replay', path));
    expect([shown.status, shown.err]).toEqual([0, '']);
    expect(shown.out).toContain('lead: ribeye 14.2 lb at 7.40\n');
    const { out } = await run(npm('replay', path, '--json'));
    expect(JSON.parse(out)).toMatchObject({
      turns: [{ outcome: 'recorded' }],
      sent: [],
      tests: [{ item: 'ribeye', receivedLb: '14.2' }],
    });
    expect((await run(npm('replay', path, '--json'))).out).toBe(out);
  });

  it.each([
    ['bad YAML', `${kitchen}turns:\n  - {at: "2026-03-06T09:00", typed: "trim 1"}}\n${first}`, 3],
    ['a first turn without a time', `${kitchen}turns:\n  - {typed: "trim 1"}\n`, 3],
    [
      'a time that goes backwards',
      `${kitchen}turns:\n${first}  - {typed: "fat 1"}\n  - {at: "2026-03-06T08:59", typed: "lip 1"}\n`,
      5,
    ],
    ['a turn both said and typed', `${kitchen}turns:\n${first}  - {said: "fat one", typed: "fat 1"}\n`, 4],
    ['a turn that says nothing', `${kitchen}turns:\n${first}  - {from: lead}\n`, 4],
    ['an unknown key of a turn', `${kitchen}turns:\n${first}  - {typed: "fat 1", shouted: true}\n`, 4],
    ['an unknown key of the kitchen', `kitchen:\n  unit: lb\n  colour: red\nturns:\n${first}`, 3],
    ['an unknown key of the file', `${kitchen}turns:\n${first}moral: none\n`, 4],
    ['a zone that does not exist', `kitchen:\n  timezone: Nowhere/Atall\nturns:\n${first}`, 2],
    ['a date that does not exist', `${kitchen}turns:\n  - {at: "2026-02-30T09:00", typed: "trim 1"}\n`, 3],
    ['aliases that multiply', bomb, 4],
    ['no turns', kitchen, 1],
    ['an empty file', '', 1],
    ['a list instead of a shift', '- trim 1\n', 1],
  ])('exits with 2 and names file, line and fault of %s', async (_, text, line) => {
    const path = written(text);
    const { status, out, err } = await run(npm('replay', path));
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(err).toContain(`${path}:`);
    expect(Number(/:(\d+): \S/.exec(err)?.[1])).toBe(line);
  });

  it.each([['no-such-shift.yaml'], [], ['one.yaml', 'two.yaml'], ['one.yaml', '--loud']])(
    'exits with 2 on %s %s',
    async (...args) => {
      const { status, out, err } = await run(npm('replay', ...args));
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(/^[^\n]+\n$/);
    },
  );

  it('exits with 0 where turns were asked or refused', async () => {
    const path = written(
      `${kitchen}turns:\n${first}  - {typed: "undo"}\n  - {typed: "ribeye 140 lb at 7.40"}\n`,
    );
    expect(await run(npm('replay', path))).toMatchObject({ status: 0, err: '' });
  });
});

describe('the chat', () => {
  const TEST = ['ribeye 14.2 lb at 7.40', 'trim 1.1', 'fat 1.9', 'portions weigh 11.2', 'done'];

  it('takes piped input, and answers what earlier runs stored', async () => {
    const folder = scratchFolder();
    const first = await chat(folder, ...TEST);
    expect(first).toMatchObject({ status: 0, err: '' });
    const second = await chat(folder, "what's ribeye at", 'ribeye history');
    expect(second.out).toContain('$9.38/lb');
    expect(second.out).toContain('14.2 lb');
  });

  it('makes nothing of an empty line, and says so of a line that is not for it', async () => {
    const { out } = await chat(scratchFolder(), '', 'who took my knife');
    expect(out).toMatch(/^[^\n]+\n$/);
  });

  it('keeps every answered entry through kill -9, and goes on from there', { timeout: 120_000 }, async () => {
    const folder = scratchFolder();
    const said = [
      'brisket 13.6 lb at 4.90',
      'fat 2.2',
      'trim 1.4',
      'purge 0.3',
      'trim is worth 1.80',
      'portions weigh 9.4',
      'another half pound of fat',
    ];
    for (const line of said) await killedAfterAnswer(folder, line);
    const { out } = await chat(folder, 'where are we');
    for (const kept of ['brisket 13.6 lb', 'fat 2.7 lb', 'trim 1.4 lb', '$1.80/lb', 'purge 0.3 lb', '9.4 lb'])
      expect(out).toContain(kept);
    // Undo still knows what was said before the last crash, and takes it back once.
    expect((await chat(folder, 'undo', 'where are we')).out).toContain('fat 2.2 lb');
  });

  it('remembers a standing question through kill -9', async () => {
    const folder = scratchFolder();
    for (const line of ['brisket 13.6 lb at 4.90', 'fat 2.2', 'fat 0.4'])
      await killedAfterAnswer(folder, line);
    expect((await chat(folder, 'add')).out).toContain('2.6 lb');
  });

  it('refuses a second process with one sentence, and the first goes on', async () => {
    const folder = scratchFolder();
    const first = opened(folder);
    expect(await first.answerTo('brisket 13.6 lb at 4.90')).toContain('13.6 lb');
    const second = await chat(folder, 'fat 2.2');
    expect([second.status, second.out]).toEqual([1, '']);
    expect(second.err).toMatch(/^[^\n]*kitchen\.db[^\n]*\n$/);
    expect(await first.answerTo('fat 2.3')).toContain('2.3 lb');
    await first.kill();
  });

  it('says one plain sentence of a file that is no database, and leaves it alone', async () => {
    const folder = scratchFolder();
    const path = join(folder, 'kitchen.db');
    writeFileSync(path, 'a shopping list, and no database at all\n'.repeat(200));
    const { status, out, err } = await chat(folder, 'fat 2.2');
    expect([status, out]).toEqual([1, '']);
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(readFileSync(path, 'utf8')).toContain('a shopping list');
  });

  it.skipIf(process.getuid?.() === 0)(
    'says one plain sentence of a folder that it may not write to',
    async () => {
      const folder = scratchFolder();
      chmodSync(folder, 0o500);
      const { status, err } = await chat(folder, 'fat 2.2');
      chmodSync(folder, 0o700);
      expect(status).toBe(1);
      expect(err).toMatch(/^[^\n]+\n$/);
    },
  );
});

describe('rebuild and backup', () => {
  const TEST = ['ribeye 14.2 lb at 7.40', 'trim 1.1', 'fat 1.9', 'portions weigh 11.2', 'done'];

  it('says that the read models were right, or that they differed and are right again', async () => {
    const folder = scratchFolder();
    const env = kitchenIn(folder);
    await chat(folder, ...TEST);
    const same = await run(npm('rebuild'), { env });
    expect(same).toMatchObject({ status: 0, err: '' });
    tamper(folder);
    expect((await chat(folder, "what's ribeye at")).out).not.toContain('$9.38/lb');
    const differed = await run(npm('rebuild'), { env });
    expect(differed.status).toBe(0);
    expect(differed.out).not.toBe(same.out);
    expect((await run(npm('rebuild'), { env })).out).toBe(same.out);
    expect((await chat(folder, "what's ribeye at")).out).toContain('$9.38/lb');
  });

  it('makes a copy that the chat can open, while the chat runs, and never writes over a file', async () => {
    const folder = scratchFolder();
    const first = opened(folder);
    await first.answerTo('brisket 13.6 lb at 4.90');
    const copy = join(scratchFolder(), 'kitchen.db');
    const made = await run(npm('backup', copy), { env: kitchenIn(folder) });
    expect([made.status, made.err]).toEqual([0, '']);
    await first.kill();
    expect(
      (
        await run(['npm', 'start', '-s'], {
          input: 'where are we\n',
          env: { DATABASE_URL: `sqlite:${copy}` },
        })
      ).out,
    ).toContain('13.6 lb');
    const before = readFileSync(copy);
    const again = await run(npm('backup', copy), { env: kitchenIn(folder) });
    expect(again.status).toBe(1);
    expect(again.err).toMatch(/^[^\n]+\n$/);
    expect(readFileSync(copy).equals(before)).toBe(true);
  });

  it('has nothing to copy where there is no kitchen', async () => {
    const folder = scratchFolder();
    const { status, err } = await run(npm('backup', join(folder, 'copy.db')), { env: kitchenIn(folder) });
    expect(status).toBe(1);
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(existsSync(join(folder, 'copy.db'))).toBe(false);
    const nowhere = { DATABASE_URL: `sqlite:${join(folder, 'no', 'such', 'folder.db')}` };
    expect((await run(npm('backup', join(folder, 'copy.db')), { env: nowhere })).err).toMatch(/^[^\n]+\n$/);
  });

  it('finds nothing wrong where nothing was ever entered', async () => {
    const { status, out, err } = await run(npm('rebuild'), { env: kitchenIn(scratchFolder()) });
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(/^0 [^\n]+\n$/);
  });

  it('exits with 2 on a backup without a name, and on a command that there is not', async () => {
    const env = kitchenIn(scratchFolder());
    expect(await run(npm('backup'), { env })).toMatchObject({ status: 2, out: '' });
    expect(await run([process.execPath, 'src/launch.js', 'sing'], { env })).toMatchObject({
      status: 2,
      out: '',
    });
  });
});

describe('a bad setting', () => {
  it.each([
    ['DATABASE_URL', 'mysql://x'],
    ['DATABASE_URL', 'sqlite:'],
    ['KITCHEN_UNIT', 'stone'],
    ['KITCHEN_CURRENCY', 'dollars'],
    ['KITCHEN_TIMEZONE', 'Nowhere/Atall'],
    ['KITCHEN_LANGUAGE', 'xx'],
    ['LOG_LEVEL', 'loud'],
  ])('%s=%s is named, and ends the program with 2', async (name, value) => {
    const { status, out, err } = await run(['npm', 'start', '-s'], {
      env: { ...kitchenIn(scratchFolder()), [name]: value },
    });
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(new RegExp(`^[^\\n]*${name}[^\\n]*\\n$`));
  });
});

/** A chat that stays open: what it answers to a line, and its end without a goodbye. */
function opened(folder: string) {
  // Not through npm: killing that would leave the chat itself running.
  const child: ChildProcessWithoutNullStreams = spawn(process.execPath, ['src/launch.js'], {
    env: environmentWith(kitchenIn(folder)),
  });
  const lines = createInterface({ input: child.stdout });
  const ended = once(child, 'close').then((): never => {
    throw new Error('the chat ended');
  });
  ended.catch(() => undefined);
  return {
    answerTo: async (line: string): Promise<string> => {
      const answer = once(lines, 'line');
      child.stdin.write(`${line}\n`);
      return String((await Promise.race([answer, ended]))[0]);
    },
    kill: async (): Promise<void> => {
      child.kill('SIGKILL');
      await ended.catch(() => undefined);
    },
  };
}

async function killedAfterAnswer(folder: string, line: string): Promise<void> {
  const chatting = opened(folder);
  await chatting.answerTo(line);
  await chatting.kill();
}

/** Someone, or something, has written into the read models. */
function tamper(folder: string): void {
  const db = new Database(join(folder, 'kitchen.db'));
  const { pool } = db.prepare<[], { pool: string }>('SELECT pool FROM pool_row').get() ?? { pool: '' };
  const changed = pool.replace(/("portionGrams":\{?[^\d]*)\d/, '$19');
  expect(changed).not.toBe(pool);
  db.prepare('UPDATE pool_row SET pool = ?').run(changed);
  db.close();
}
