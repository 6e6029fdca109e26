// A service for one test, with the client that the bot uses, and people in it.
import { Api, GrammyError, HttpError } from 'grammy';
import type { Update } from 'grammy/types';
import { onTestFinished } from 'vitest';
import { startBotApi, type BotApi } from './start.ts';
import type { Options } from './world/options.ts';

export interface Given {
  readonly service: BotApi;
  readonly bot: Api;
  /** A person who has started the bot; the id is that of the private chat too. */
  readonly cook: number;
}

export const clientOf = ({ url, token }: Pick<BotApi, 'url' | 'token'>, asToken = token): Api =>
  new Api(asToken, { apiRoot: url, fetch: globalThis.fetch });

export async function given(options: Partial<Options> = {}): Promise<Given> {
  const service = await startBotApi(options);
  onTestFinished(() => service.close());
  const cook = service.addUser({ first_name: 'Ana' }).id;
  service.start(cook);
  return { service, bot: clientOf(service), cook };
}

/** A group with the bot and the cook in it. */
export function kitchenGroup({ service, cook }: Given): number {
  const { id } = service.addGroup({ title: 'Kitchen', owner: cook });
  service.addBot({ chat: id, by: cook });
  return id;
}

/** What the service answered to a call that it refused, or `http` where there was no answer to read. */
export async function refusedWith(call: Promise<unknown>): Promise<string> {
  try {
    await call;
  } catch (error) {
    if (error instanceof GrammyError) return `${error.error_code} ${error.description}`;
    if (error instanceof HttpError) return 'http';
    throw error;
  }
  return 'done';
}

/** A call by hand, for what the client would not send. */
export async function post({ url, token }: BotApi, method: string, init: RequestInit): Promise<unknown> {
  const response = await fetch(`${url}/bot${token}/${method}`, { method: 'POST', ...init });
  return response.json();
}

export const kindsOf = (updates: readonly Update[]): readonly (string | undefined)[] =>
  updates.map((update) => Object.keys(update).find((key) => key !== 'update_id'));

export const idsOf = (updates: readonly Update[]): readonly number[] =>
  updates.map(({ update_id }) => update_id);
