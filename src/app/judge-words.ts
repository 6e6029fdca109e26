// A line by itself: what its words say, and what a careful listener would ask, with no test and no kitchen behind it.
import type { Entry, Kind } from '../core/entry.ts';
import { entryJson, type Json } from '../core/entry-json.ts';
import type { Settings } from '../core/kitchen.ts';
import { name, type Reply, say, weight } from '../core/reply.ts';
import type { KitchenUnit } from '../core/quantity.ts';
import { doubt } from '../intents/doubt.ts';
import { loosePriceAsk } from '../intents/loose-price.ts';
import type { Listener } from '../language/listen.ts';
import { parse } from '../language/parse.ts';
import { isSure } from './heard.ts';
import type { HeardAs } from './ports/table.ts';
import type { Judged } from './ports/words.ts';
import type { Voice } from './voice.ts';
import { understand } from './understand.ts';

export function judgeWords(
  voice: Pick<Voice, 'render'>,
  listener: Listener,
  { settings, line, at, heard }: { settings: Settings; line: string; at: string; heard?: HeardAs },
): Judged {
  const entries: Json[] = [];
  let asked: Reply | undefined;
  const clock = { at, zone: settings.timezone };
  const hearing = { unit: settings.unit, clock, language: listener.language };
  for (const one of understand(parse(listener, line, { answering: false }), hearing)) {
    const unsure = 'ask' in one || isSure(heard, one.entry.kind) ? undefined : doubt(one.entry, line).asked;
    const ask = 'ask' in one ? one.ask.asked : (unsure ?? lacks(one.entry, settings.unit));
    if (ask !== undefined) asked ??= ask;
    else if ('entry' in one && !MEAN_NOTHING_ALONE.has(one.entry.kind)) entries.push(entryJson(one.entry));
  }
  const reader = { ...settings, seesCosts: true };
  return { entries, ask: asked === undefined ? null : voice.render([asked], reader) };
}

/** Names and words that something must stand for. */
const MEAN_NOTHING_ALONE: ReadonlySet<Kind> = new Set(['name', 'acknowledge']);

/** What no scene could supply: of what a piece is, and what a container weighs. */
function lacks(entry: Entry, unit: KitchenUnit): Reply | undefined {
  if (entry.kind === 'receive' && entry.item === undefined)
    return say('ask-what-item', { weight: weight(entry.weight) });
  if (entry.kind === 'receive') return loosePriceAsk(entry, unit)?.asked;
  if (entry.kind === 'weigh' && entry.container !== undefined)
    return say('ask-tare', { container: name(entry.container) });
  return undefined;
}
