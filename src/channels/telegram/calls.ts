// Calls to the service, and what their failure means: above all whether the call may have taken effect.
import { Api, GrammyError, HttpError } from 'grammy';
import type { Letter } from '../../app/ports/mailbox.ts';
import { backoffMs, type Pace } from './pace.ts';

export interface Service {
  readonly token: string;
  /** Another server than the official one. */
  readonly apiRoot?: string;
}

/** Without a limit of its own a client waits for minutes at a server that says nothing. */
export const newApi = ({ token, apiRoot }: Service, timeoutSeconds: number): Api =>
  new Api(token, {
    fetch: globalThis.fetch,
    timeoutSeconds,
    ...(apiRoot === undefined ? {} : { apiRoot }),
  });

export const pollTimeout = ({ pollSeconds, callSeconds }: Pace): number => pollSeconds + callSeconds;

export type Trouble =
  /** Not carried out; the service says when to come back. */
  | { readonly is: 'tooMany'; readonly seconds: number }
  /** Not carried out, and nothing is wrong with the call. */
  | { readonly is: 'unreached' | 'refusedToken' }
  /** Never will be carried out. */
  | { readonly is: 'impossible' }
  /** It may have been carried out. */
  | { readonly is: 'unknown' };

export function troubleOf(error: unknown): Trouble {
  if (error instanceof GrammyError) return refusalOf(error);
  return { is: error instanceof HttpError && isUnsent(error.error) ? 'unreached' : 'unknown' };
}

function refusalOf({ error_code: code, parameters }: GrammyError): Trouble {
  if (code === 429) return { is: 'tooMany', seconds: parameters.retry_after ?? 1 };
  // 404: the service knows no bot of that token.
  if (code === 401 || code === 404) return { is: 'refusedToken' };
  return { is: code >= 400 && code < 500 ? 'impossible' : 'unknown' };
}

/** How long to leave the service alone after so many failures in a row. */
export function waitMs(pace: Pace, error: unknown, failures: number): number {
  const trouble = troubleOf(error);
  return trouble.is === 'tooMany' ? trouble.seconds * 1000 : backoffMs(pace, failures);
}

/** No connection came about, so that nothing was said. */
const UNSENT = [
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'UND_ERR_CONNECT_TIMEOUT',
];

function isUnsent(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error ? error.code : undefined;
  return (typeof code === 'string' && UNSENT.includes(code)) || isUnsent(error.cause);
}

/** What may be logged of an error: no address (it holds the token), no payload (it holds words of people). */
export function traceOf(error: unknown): Readonly<Record<string, string | number | undefined>> {
  if (error instanceof GrammyError)
    return { error: error.name, code: error.error_code, method: error.method };
  if (!(error instanceof Error)) return { error: typeof error };
  const at = /^\s+at .*$/m.exec(error.stack ?? '')?.[0].trim();
  return { error: error.name, at };
}

/** Silent: a kitchen is loud enough. Without a parse mode, so that no text can be taken for markup. */
export async function sendLetter(api: Api, { kind, chat, text }: Letter): Promise<void> {
  switch (kind) {
    case 'message':
      await api.sendMessage(chat, text, {
        disable_notification: true,
        link_preview_options: { is_disabled: true },
      });
      return;
    case 'leave':
      await api.leaveChat(chat);
  }
}
