// Given what was said at the table, when somebody says more: what is decided, as facts or as the name of a question.
import { decimal } from '../../src/core/decimal.ts';
import type { Entry } from '../../src/core/entry.ts';
import type { Fact, Recorded } from '../../src/core/facts.ts';
import { evolveAll, newKitchen } from '../../src/core/kitchen.ts';
import { decide } from '../../src/intents/index.ts';
import type { Decision, Scene } from '../../src/intents/intent.ts';

interface Past {
  readonly fact: Fact;
  readonly by?: string;
  readonly test?: number;
  readonly item?: string;
}

/** A fact of the ribeye on the table, by ana, or by whom and of which test it is said. */
export const fact = (said: Fact, more: Omit<Past, 'fact'> = {}): Past => ({ fact: said, ...more });

/** The facts are entries e1, e2 and so on; those of test 2 are of a striploin. */
export function given(...past: readonly Past[]): Scene {
  const recorded = past.map(
    ({ fact: said, by = 'ana', test = 1, item = test === 1 ? 'ribeye' : 'striploin' }, index): Recorded => ({
      entry: `e${index + 1}`,
      speaker: by,
      at: `2026-03-06T09:${String(index).padStart(2, '0')}:00Z`,
      test,
      item,
      fact: said,
    }),
  );
  const settings = {
    unit: 'lb',
    currency: 'USD',
    timezone: 'UTC',
    language: 'en',
    laborAvoidable: true,
  } as const;
  const usual = new Map([['ribeye', [decimal('6350')]]]);
  return {
    kitchen: evolveAll(newKitchen(settings), recorded),
    speaker: 'ana',
    at: '2026-03-06T10:00:00Z',
    usual,
    role: 'owner',
    seesCosts: true,
    past: [],
  };
}

export const by = (scene: Scene, speaker: string): Scene => ({ ...scene, speaker });

/** The facts that are recorded, without their test and item. */
export function factsOf(scene: Scene, entry: Entry): readonly Fact[] {
  const decision = decide(scene, entry);
  return decision.is === 'recorded' ? decision.facts.map((each) => each.fact) : [];
}

/** The tests that the facts go to. */
export function testsOf(scene: Scene, entry: Entry): readonly (number | undefined)[] {
  const decision = decide(scene, entry);
  return decision.is === 'recorded' ? decision.facts.map((each) => each.test) : [];
}

/** What was decided, in a word: the name of the question or of the first message where it is one. */
export function outcomeOf(scene: Scene, entry: Entry): string {
  const decision: Decision = decide(scene, entry);
  if (decision.is === 'asked') return decision.ask.asked.id;
  return decision.is === 'answered' || decision.is === 'refused'
    ? `${decision.is} ${decision.say[0]?.id ?? ''}`
    : decision.is;
}

/** The entry that an answer in words makes of the question; undefined where the words are no answer. */
export function answer(scene: Scene, entry: Entry, word: string): Entry {
  const decision = decide(scene, entry);
  const chosen = decision.is === 'asked' ? decision.ask.choices[word] : undefined;
  if (chosen === undefined) throw new Error(`"${word}" is no answer to ${outcomeOf(scene, entry)}`);
  return chosen;
}
