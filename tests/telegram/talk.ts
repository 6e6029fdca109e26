// Talking with the bot of a test: say something, wait until all of it is handled and sent, see what is new in the chat.
import { expect, onTestFinished } from 'vitest';
import type { Seen } from './bot-api/scenario/view.ts';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { newPath, runBot, type Running } from './running.ts';

export const BOT = '7000000001';

export async function service(): Promise<BotApi> {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  return api;
}

export interface Talk {
  readonly api: BotApi;
  readonly bot: Pick<Running, 'store'>;
}

/** Everything that was said is handled, and everything that was to be sent is sent. */
export async function quiet({ api, bot }: Talk): Promise<void> {
  await api.awaitConfirmed();
  await expect
    .poll(async () => ({ ...(await bot.store.backlog(BOT)), strangers: 0 }), { timeout: 10_000 })
    .toEqual({ strangers: 0 });
}

/** What changed in a chat by an act: new messages of the bot, and old ones in their new form. */
export async function shownBy(talk: Talk, chat: number, act: () => unknown): Promise<readonly Seen[]> {
  const before = new Map(talk.api.seenFromBot(chat).map((each) => [each.message_id, JSON.stringify(each)]));
  act();
  await quiet(talk);
  return talk.api.seenFromBot(chat).filter((each) => before.get(each.message_id) !== JSON.stringify(each));
}

/** A message that is new, else what a card says last. */
export function lastWords(shown: readonly Seen[]): string {
  const words = shown.map(({ text }) => text.split('\n\n').at(-1) ?? '');
  return words.at(-1) ?? '';
}

export async function ask(talk: Talk, from: number, text: string, chat = from): Promise<string> {
  return lastWords(await shownBy(talk, chat, () => talk.api.say({ from, chat, text })));
}

export const codeIn = (text: string): string => /start=([\w-]+)/.exec(text)?.[1] ?? '';

export interface Team extends Talk {
  readonly bot: Running;
  readonly owner: number;
  readonly cutter: number;
  readonly path: string;
}

/** A kitchen with an owner and a cutter. */
export async function withTeam(kitchens?: readonly string[]): Promise<Team> {
  const api = await service();
  const path = newPath();
  const [owner, cutter] = [api.addUser({ first_name: 'Ines' }).id, api.addUser({ first_name: 'Tobin' }).id];
  const bot = await runBot({ service: api, owner, path, ...(kitchens === undefined ? {} : { kitchens }) });
  const talk = { api, bot };
  const code = codeIn(await ask(talk, owner, 'invite a cutter'));
  expect(await ask(talk, cutter, `/start ${code}`)).toContain('Tobin');
  return { ...talk, owner, cutter, path };
}

/** The card that stands last in a chat, as it is now. */
export const cardIn = ({ api }: Pick<Talk, 'api'>, chat: number): Seen => {
  const card = api
    .seenFromBot(chat)
    .findLast(({ buttons }) => buttons.flat().some(({ text }) => text === 'Done'));
  if (card === undefined) throw new Error('no card in the chat');
  return card;
};
