// The bot: a poller, the intake and a sender around one mailbox.
import type { Api } from 'grammy';
import type { NewLetter } from '../../app/ports/mailbox.ts';
import { name, say } from '../../core/reply.ts';
import { newBudget } from './budget.ts';
import { newApi, pollTimeout, type Service, traceOf, troubleOf } from './calls.ts';
import { type Desk, letters } from './desk.ts';
import { takeIn } from './intake.ts';
import { backoffMs, newBell, PACE, type Pace, pause } from './pace.ts';
import { poll } from './poller.ts';
import { type Readiness, readinessOf } from './readiness.ts';
import { send } from './sender.ts';
import { newInvite } from './team.ts';

export interface BotParts extends Pick<
  Desk,
  'kitchen' | 'table' | 'post' | 'words' | 'readTeamWish' | 'log'
> {
  readonly service: Service;
  /** The person whom the settings name. */
  readonly owner?: number;
  /** Given the code with which the owner claims the kitchen, where nobody owns it. */
  readonly onClaim: (code: string) => void;
  readonly pace?: Pace;
}

export interface Bot {
  readonly readiness: () => Promise<Readiness>;
  /** Resolves when it has stopped; `refused`: the service does not know the token. */
  readonly ended: Promise<'stopped' | 'refused'>;
  /** Ends within seconds; nothing that is not stored is confirmed. */
  readonly stop: () => void;
}

/** A cook says no more than that; what waits for an answer of a machine is no cook. */
const MEMBER_BUDGET = { size: 60, perSecond: 1 };
/** One line an hour. */
const STRANGER_BUDGET = { size: 1, perSecond: 1 / 3600 };

export async function startBot(parts: BotParts): Promise<Bot> {
  const bot = parts.service.token.split(':')[0] ?? '';
  await appointOwner(parts);
  const interrupted = await parts.post.noteInterrupted(bot);
  if (interrupted > 0) parts.log.warn({ letters: interrupted }, 'letters of unknown arrival');
  const stopping = new AbortController();
  const polled = { atMs: undefined as number | undefined };
  return {
    readiness: async () => readinessOf(await parts.post.backlog(bot), polled.atMs),
    ended: run(parts, { bot, signal: stopping.signal, onPolled: () => (polled.atMs = Date.now()) }),
    stop: () => {
      stopping.abort();
    },
  };
}

async function appointOwner({ post, kitchen, owner, onClaim }: BotParts): Promise<void> {
  if (owner !== undefined)
    return post.appoint(kitchen, { person: owner, name: String(owner), role: 'owner' });
  const members = await post.members(kitchen);
  if (members.some(({ role }) => role === 'owner')) return;
  const { code, invite } = newInvite('owner');
  await post.replaceClaim(kitchen, invite);
  onClaim(code);
}

interface Running {
  readonly bot: string;
  readonly signal: AbortSignal;
  readonly onPolled: () => void;
}

async function run(parts: BotParts, running: Running): Promise<'stopped' | 'refused'> {
  const { service, pace = PACE, post, log } = parts;
  const { bot, signal } = running;
  const api = newApi(service, pace.callSeconds);
  const username = await ownName(api, { ...running, pace, log });
  if (username === undefined) return signal.aborted ? 'stopped' : 'refused';
  const [stored, posted] = [newBell(), newBell()];
  const shared = { bot, post, pace, log, signal };
  const notice = parts.words(say('telegram-unknown'));
  const tellOwners = (chat: number): Promise<readonly NewLetter[]> => lettersToOwners(parts, chat);
  signal.addEventListener('abort', () => {
    stored.ring();
    posted.ring();
  });
  await Promise.all([
    poll({ ...shared, ...running, api: newApi(service, pollTimeout(pace)), onStored: stored.ring }),
    takeIn({ ...shared, desk: deskOf(parts, bot, username), bell: stored, onHandled: posted.ring }),
    send({ ...shared, api, bell: posted, notice, tellOwners }),
  ]);
  return 'stopped';
}

const deskOf = (parts: BotParts, bot: string, username: string): Desk => ({
  ...parts,
  bot,
  username: () => username,
  members: newBudget(MEMBER_BUDGET),
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
  { post, kitchen, words }: BotParts,
  chat: number,
): Promise<readonly NewLetter[]> {
  const members = await post.members(kitchen);
  const whose = members.find(({ person }) => person === chat);
  if (whose === undefined) return [];
  const text = words(say('telegram-unreachable', { name: name(whose.name) }));
  const owners = members.filter(({ role, person }) => role === 'owner' && person !== chat);
  return owners.flatMap(({ person }) => letters(person, text));
}
