// The bot: a poller, the intake and a sender around one mailbox.
import type { Api } from 'grammy';
import type { RequestListener } from 'node:http';
import type { NewLetter } from '../../app/ports/mailbox.ts';
import type { KeepRecording } from '../../app/ports/recordings.ts';
import type { SpeakNote } from '../../app/ports/speech.ts';
import type { KitchenId, Posted } from '../../app/ports/store.ts';
import type { Told } from '../../app/ports/table.ts';
import { type Levels, type Metrics, UNMEASURED } from '../../app/ports/metrics.ts';
import { name, say } from '../../core/reply.ts';
import { newBudget } from './budget.ts';
import { hearingSign, newApi, pollTimeout, type Service, traceOf, troubleOf } from './calls.ts';
import { type ContactBook, newContactBook } from './contact.ts';
import { type Desk, letters } from './desk.ts';
import { takeIn } from './intake.ts';
import { backoffMs, type Bell, newBell, PACE, type Pace, pause } from './pace.ts';
import { poll } from './poller.ts';
import { levelsOf, type Readiness, readinessOf } from './readiness.ts';
import { send } from './sender.ts';
import { newInvite } from './team.ts';
import { postedTo } from './tell.ts';
import { downloader } from './download.ts';
import { newTaking, type Webhook } from './webhook.ts';
import { watchWebhook } from './webhook-watch.ts';

export interface BotParts extends Pick<Desk, 'tables' | 'ears' | 'post' | 'words' | 'readTeamWish' | 'log'> {
  readonly service: Service;
  /** The person whom the settings name, and the kitchen that is theirs. */
  readonly owner?: { readonly person: number; readonly kitchen: KitchenId };
  /** Given the code with which an owner claims a kitchen that nobody owns. */
  readonly onClaim: (code: string, kitchen: KitchenId) => void;
  readonly pace?: Pace;
  /** Reads answers out; without it there are none but in writing. */
  readonly speak?: SpeakNote;
  readonly keep?: KeepRecording;
  readonly metrics?: Metrics;
  /** Where the service brings updates; without it they are polled for. */
  readonly webhook?: Webhook;
}

export interface Bot {
  /** For what comes to the webhook. */
  readonly take?: RequestListener;
  readonly levels: () => Promise<Levels>;
  readonly readiness: () => Promise<Readiness>;
  /** Resolves when it has stopped; `refused`: the service does not know the token. */
  readonly ended: Promise<'stopped' | 'refused'>;
  /** What falls due, as letters to whom it goes. */
  readonly post: (kitchen: KitchenId) => (told: Told) => Promise<Posted>;
  /** Ends within seconds; nothing that is not stored is confirmed. */
  readonly stop: () => void;
}

/** A cook says no more than that; what waits for an answer of a machine is no cook. */
const MEMBER_BUDGET = { size: 60, perSecond: 1 };
/** One line an hour. */
const STRANGER_BUDGET = { size: 1, perSecond: 1 / 3600 };

export async function startBot(parts: BotParts): Promise<Bot> {
  const { post, webhook, metrics = UNMEASURED, log } = parts;
  const bot = parts.service.token.split(':')[0] ?? '';
  await appointOwner(parts);
  const interrupted = await post.noteInterrupted(bot);
  if (interrupted > 0) log.warn({ letters: interrupted }, 'letters of unknown arrival');
  const stopping = new AbortController();
  const { signal } = stopping;
  const contact = newContactBook(
    webhook === undefined ? { is: 'poll' } : { is: 'webhook', waiting: 0, isFailing: false },
  );
  const stored = newBell();
  const taking = webhook && newTaking({ webhook, bot, post, log, metrics, signal, onStored: stored.ring });
  return {
    ...(taking === undefined ? {} : { take: taking.take }),
    readiness: async () => readinessOf(await post.backlog(bot), contact.read()),
    levels: async () => levelsOf(await post.backlog(bot), contact.read()),
    ended: run(parts, { bot, signal, contact, stored }).finally(taking?.idle),
    post: (kitchen) => (told) => postedTo({ ...parts, bot }, kitchen, told),
    stop: () => {
      stopping.abort();
    },
  };
}

async function appointOwner({ post, tables, owner, onClaim }: BotParts): Promise<void> {
  if (owner !== undefined)
    await post.appoint(owner.kitchen, { person: owner.person, name: String(owner.person), role: 'owner' });
  for (const kitchen of tables.keys()) {
    const members = await post.members(kitchen);
    if (members.some(({ role }) => role === 'owner')) continue;
    const { code, invite } = newInvite('owner');
    await post.replaceClaim(kitchen, invite);
    onClaim(code, kitchen);
  }
}

interface Running {
  readonly bot: string;
  readonly signal: AbortSignal;
  readonly contact: ContactBook;
  /** Rung when updates were stored. */
  readonly stored: Bell;
}

async function run(parts: BotParts, running: Running): Promise<'stopped' | 'refused'> {
  const { service, pace = PACE, post, log } = parts;
  const { bot, signal, stored } = running;
  const api = newApi(service, pace.callSeconds);
  const username = await ownName(api, { ...running, pace, log });
  if (username === undefined) return signal.aborted ? 'stopped' : 'refused';
  const posted = newBell();
  const shared = { bot, post, pace, log, signal };
  const notices = {
    unknown: parts.words(say('telegram-unknown')),
    again: parts.words(say('button', { word: 'again' })),
    repeat: parts.words(say('telegram-repeat')),
  };
  const tellOwners = (chat: number): Promise<readonly NewLetter[]> => lettersToOwners(parts, bot, chat);
  signal.addEventListener('abort', () => {
    stored.ring();
    posted.ring();
  });
  await Promise.all([
    bringIn(parts, running, api),
    takeIn({
      ...shared,
      desk: deskOf(parts, {
        ...{ bot, username, pace },
        download: downloader(api, service, pace),
        showHearing: hearingSign(api),
      }),
      bell: stored,
      onHandled: posted.ring,
    }),
    send({ ...shared, api, bell: posted, notices, tellOwners, ...(parts.speak && { speak: parts.speak }) }),
  ]);
  return 'stopped';
}

function bringIn(parts: BotParts, running: Running, api: Api): Promise<void> {
  const { service, webhook, pace = PACE, metrics = UNMEASURED } = parts;
  const { contact, stored } = running;
  const shared = { ...parts, ...running, pace, metrics };
  if (webhook !== undefined) return watchWebhook({ ...shared, webhook, api });
  const onPolled = (): void => {
    contact.write({ is: 'poll', atMs: Date.now() });
  };
  return poll({ ...shared, api: newApi(service, pollTimeout(pace)), onPolled, onStored: stored.ring });
}

interface Contacts {
  readonly bot: string;
  readonly username: string;
  readonly pace: Pace;
  readonly download: Desk['download'];
  readonly showHearing: Desk['showHearing'];
}

const deskOf = (parts: BotParts, { username, ...contacts }: Contacts): Desk => ({
  ...parts,
  ...contacts,
  username: () => username,
  members: newBudget(MEMBER_BUDGET),
  presses: newBudget(MEMBER_BUDGET),
  strangers: newBudget(STRANGER_BUDGET),
});

type Asking = Running & Pick<Required<BotParts>, 'pace' | 'log'>;

/** The name that leads to the bot. Undefined where the service refuses the token, or at the signal. */
async function ownName(api: Api, { signal, pace, log }: Asking): Promise<string | undefined> {
  for (let failures = 1; !signal.aborted; failures += 1) {
    try {
      return (await api.getMe()).username;
    } catch (error) {
      log.warn({ ...traceOf(error), failures }, 'service not there');
      if (troubleOf(error).is === 'refusedToken') return undefined;
      await pause(backoffMs(pace, failures), signal);
    }
  }
  return undefined;
}

async function lettersToOwners(
  { post, words }: BotParts,
  bot: string,
  chat: number,
): Promise<readonly NewLetter[]> {
  const member = await post.memberOf(chat);
  const kitchen = member?.kitchen ?? (await post.groupOf(bot, chat));
  if (kitchen === undefined) return [];
  const lost =
    member === undefined
      ? say('telegram-group-unreachable')
      : say('telegram-unreachable', { name: name(member.name) });
  const owners = (await post.members(kitchen)).filter(
    ({ role, person }) => role === 'owner' && person !== chat,
  );
  return owners.flatMap(({ person }) => letters(person, words(lost)));
}
