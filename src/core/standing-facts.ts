// Which facts of a test or a lot hold: what was undone is left out, what was corrected stands in its newest form.
import type { PlainFact, Recorded } from './facts.ts';

/** Entries that are void: undone by an entry that itself is not undone. Read from the newest to the oldest. */
export function undoneEntries(facts: readonly Recorded[]): ReadonlySet<string> {
  const undone = new Set<string>();
  for (let at = facts.length - 1; at >= 0; at -= 1) {
    const recorded = facts[at];
    if (recorded?.fact.type === 'undone' && !undone.has(recorded.entry)) undone.add(recorded.fact.target);
  }
  return undone;
}

export interface Standing {
  readonly recorded: Recorded;
  readonly fact: PlainFact;
}

/** The facts that hold, in the order of the log, each with its newest correction in its place. */
export function standingFacts(facts: readonly Recorded[]): readonly Standing[] {
  const undone = undoneEntries(facts);
  const corrections = new Map<string, PlainFact>();
  for (const { entry, fact } of facts)
    if (fact.type === 'corrected' && !undone.has(entry))
      corrections.set(`${fact.target} ${fact.by.type}`, fact.by);
  // Of several facts of one type that an entry made, a correction is of the last.
  const standing: Standing[] = [];
  for (const recorded of facts.toReversed()) {
    const { fact, entry } = recorded;
    if (undone.has(entry) || fact.type === 'corrected') continue;
    const key = `${entry} ${fact.type}`;
    standing.push({ recorded, fact: corrections.get(key) ?? fact });
    corrections.delete(key);
  }
  return standing.reverse();
}
