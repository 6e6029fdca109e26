// A language ready for a kitchen: how its lines are read with the kitchen's own names, and how replies are worded.
import { toGrams } from '../core/quantity.ts';
import type { Kitchen, Settings } from '../core/kitchen.ts';
import type { Ledger } from '../core/ledger.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { Bands } from '../core/slip.ts';
import { intents } from '../intents/index.ts';
import { bandsOf, limitsOf } from '../language/catalogue.ts';
import { type Language, loadLanguage } from '../language/language.ts';
import { type Listener, listener } from '../language/listen.ts';
import { type Render, renderer } from '../language/render.ts';

export interface Voice {
  readonly language: Language;
  readonly render: Render;
  readonly usual: UsualWeights;
  readonly bands: Bands;
  readonly listenerFor: (kitchen: Kitchen) => Listener;
}

/** Loads a language from the folder of all languages. Throws a DataFault where its data is wrong. */
export function loadVoice(folder: string, code: string): Voice {
  const language = loadLanguage(folder, code, intents);
  const usual = new Map(
    language.catalogue.items.map((item) => [item.name, item.usual.map(({ lb }) => toGrams(lb, 'lb'))]),
  );
  return {
    language,
    render: renderer(code, language.replies),
    usual,
    bands: bandsOf(language.catalogue),
    listenerFor: rememberingListener(language),
  };
}

/** A listener without a kitchen's own names. */
export const plainListener = (language: Language, settings: Pick<Settings, 'unit' | 'currency'>): Listener =>
  listener(language, { unit: settings.unit, limits: limitsOf(language.catalogue, settings.currency) });

/** Makes a listener anew only where the kitchen has learnt a name. */
function rememberingListener(language: Language): Voice['listenerFor'] {
  let last: { items: Kitchen['items']; parts: Kitchen['parts']; memory: number; made: Listener } | undefined;
  return (kitchen) => {
    const { items, parts, memory, settings } = kitchen;
    if (last?.items === items && last.parts === parts && last.memory === memory.size) return last.made;
    const names = { items, parts, containers: containersOf(memory) };
    const made = listener(language, {
      unit: settings.unit,
      limits: limitsOf(language.catalogue, settings.currency),
      names,
    });
    last = { items, parts, memory: memory.size, made };
    return made;
  };
}

const TARE = 'tare:';

const containersOf = (memory: ReadonlyMap<string, Ledger>): ReadonlySet<string> =>
  new Set([...memory.keys()].filter((key) => key.startsWith(TARE)).map((key) => key.slice(TARE.length)));
