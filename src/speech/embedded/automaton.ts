// A grammar as the fewest states that hold it. The recogniser's own reader of grammars writes every rule out wherever it is
// used, and each of its states costs time in every frame of sound; here what ends alike is one state.
import { type Form, readGrammar } from './jsgf.ts';

/** From a state to another by a word, or by nothing to the end, with the logarithm of how likely it is. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly word: string | undefined;
  readonly logp: number;
}

export interface Automaton {
  readonly states: number;
  readonly start: number;
  readonly end: number;
  readonly arcs: readonly Arc[];
}

type Step = Omit<Arc, 'from'>;

const END = 0;

/** Of a grammar without rules that hold themselves. */
export function automaton(grammar: string): Automaton {
  const { rules, said } = readGrammar(grammar);
  const steps: (readonly Step[])[] = [[]];
  const known = new Map<string, number>();
  const ruleStates = new Map<string, number>();

  /** The state with these steps, the likelier where two are alike. */
  const stateOf = (all: readonly Step[]): number => {
    const best = new Map<string, Step>();
    for (const step of all) {
      const key = `${step.word ?? ''}>${step.to}`;
      const there = best.get(key);
      if (there === undefined || there.logp < step.logp) best.set(key, step);
    }
    const key = [...best]
      .map(([name, { logp }]) => `${name}:${logp.toFixed(4)}`)
      .sort()
      .join(' ');
    const there = known.get(key);
    if (there !== undefined) return there;
    known.set(key, steps.length);
    return steps.push([...best.values()]) - 1;
  };

  /** What a state can do first; the end does nothing, and is reached by nothing. */
  const firstOf = (state: number): readonly Step[] =>
    state === END ? [{ to: END, word: undefined, logp: 0 }] : (steps[state] ?? []);

  const before = (form: Form, next: number): number => {
    switch (form.is) {
      case 'word':
        return stateOf([{ to: next, word: form.word, logp: 0 }]);
      case 'rule': {
        const key = `${form.name}>${next}`;
        const there = ruleStates.get(key) ?? before(ruleNamed(form.name), next);
        ruleStates.set(key, there);
        return there;
      }
      case 'row':
        return form.forms.reduceRight((state, each) => before(each, state), next);
      case 'choice': {
        const sum = form.options.reduce((total, { weight }) => total + weight, 0);
        return stateOf(
          form.options.flatMap(({ weight, form: option }) =>
            firstOf(before(option, next)).map((step) => ({
              ...step,
              logp: step.logp + Math.log(weight / sum),
            })),
          ),
        );
      }
    }
  };
  const ruleNamed = (name: string): Form => {
    const rule = rules.get(name);
    if (rule === undefined) throw new Error(`the grammar has no rule <${name}>`);
    return rule;
  };

  return reached(steps, before(said, END));
}

/** Without the states that only a choice was made of. */
function reached(steps: readonly (readonly Step[])[], first: number): Automaton {
  const places = new Map([[END, 0]]);
  const arcs: Arc[] = [];
  const placeOf = (state: number): number => {
    const there = places.get(state);
    if (there !== undefined) return there;
    const from = places.size;
    places.set(state, from);
    for (const step of steps[state] ?? []) arcs.push({ ...step, from, to: placeOf(step.to) });
    return from;
  };
  const start = placeOf(first);
  return { states: places.size, start, end: 0, arcs };
}
