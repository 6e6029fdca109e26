// The service in the process of a test.
import { scenarioOf, type Scenario } from './controls.ts';
import { exchange } from './http/exchange.ts';
import { listen, type Listener, type OutageMode } from './http/listen.ts';
import { endWebhook, startLanes } from './updates/webhook.ts';
import { type Options, withDefaults } from './world/options.ts';
import { newWorld, type World } from './world/world.ts';

export interface Controls extends Scenario {
  /** Nobody listens (`refuse`), or each connection is cut as it comes (`drop`); webhooks rest. */
  readonly outage: (mode: OutageMode) => Promise<void>;
  readonly recover: () => Promise<void>;
}

export interface BotApi extends Controls {
  /** For the client's `apiRoot`. */
  readonly url: string;
  readonly token: string;
  readonly close: () => Promise<void>;
}

export async function startBotApi(options: Partial<Options> = {}): Promise<BotApi> {
  const world = newWorld(withDefaults(options));
  const listener = await listen((request, response) => {
    void exchange(world, request, response);
  }, world.options.port);
  return {
    url: `http://127.0.0.1:${listener.port}`,
    token: world.options.token,
    ...scenarioOf(world),
    ...outages(world, listener),
    close: async () => {
      endWebhook(world);
      await listener.close();
    },
  };
}

function outages(world: World, listener: Listener): Pick<Controls, 'outage' | 'recover'> {
  return {
    outage: async (mode) => {
      world.isOut = true;
      await listener.outage(mode);
    },
    recover: async () => {
      world.isOut = false;
      await listener.recover();
      startLanes(world);
    },
  };
}
