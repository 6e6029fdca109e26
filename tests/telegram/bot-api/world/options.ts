// How a server for one test is set up. All of it has a default that fits most tests.

/** Counters that answer 429. None is on unless a test sets it. */
export interface Limits {
  readonly chatPerSecond?: number;
  readonly groupPerMinute?: number;
  readonly groupEditsPerMinute?: number;
  readonly allPerSecond?: number;
}

export interface Options {
  readonly token: string;
  readonly botName: string;
  readonly botUsername: string;
  /** False is the privacy mode: in groups only commands, replies to the bot and service messages arrive. */
  readonly readsAllGroupMessages: boolean;
  readonly limits: Limits;
  readonly firstUpdateId: number;
  /** The documentation gives no figure for how long a press can be answered. */
  readonly pressLifetimeSeconds: number;
  /** Documented: a download link is good for at least an hour. */
  readonly linkLifetimeSeconds: number;
  /** The first pause before a webhook is called again; it doubles up to twenty times that. */
  readonly webhookRetryMs: number;
  /** 0 takes a free one. */
  readonly port: number;
}

/** Ids are larger than 32 bits, as new ones are. */
const DEFAULTS: Options = {
  token: '7000000001:AAtest-token_of-the-kitchen-00000000',
  botName: 'Blockhand',
  botUsername: 'blockhand_bot',
  readsAllGroupMessages: true,
  limits: {},
  firstUpdateId: 810_000_001,
  pressLifetimeSeconds: 600,
  linkLifetimeSeconds: 3600,
  webhookRetryMs: 20,
  port: 0,
};

export const withDefaults = (given: Partial<Options>): Options => ({ ...DEFAULTS, ...given });
