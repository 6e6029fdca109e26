// The automaton against the grammar that it is made of: the same sentences, as likely.
import { describe, expect, it } from 'vitest';
import { type Automaton, automaton } from '../../src/speech/embedded/automaton.ts';
import { sentenceOf } from '../language/ear/sentences-of.ts';
import { seeded } from '../language/seeded.ts';
import { expected } from './given.ts';

/** Every sentence, with how likely it is. */
function sentencesOf({ start, end, arcs }: Automaton): Readonly<Record<string, number>> {
  const found: Record<string, number> = {};
  const walk = (state: number, said: readonly string[], logp: number): void => {
    if (state === end) found[said.join(' ')] = Number(Math.exp(logp).toFixed(6));
    for (const arc of arcs)
      if (arc.from === state)
        walk(arc.to, arc.word === undefined ? said : [...said, arc.word], logp + arc.logp);
  };
  walk(start, [], 0);
  return found;
}

function takes({ start, end, arcs }: Automaton, sentence: string): boolean {
  let states = new Set([start]);
  const follow = (word: string | undefined): Set<number> =>
    new Set(arcs.filter((arc) => states.has(arc.from) && arc.word === word).map(({ to }) => to));
  for (const word of sentence.split(' ')) states = follow(word);
  return states.has(end) || follow(undefined).has(end);
}

const grammar = (...rules: readonly string[]): string => ['#JSGF V1.0;', 'grammar ear;', ...rules].join('\n');

describe('a small grammar', () => {
  // By hand: a choice shares 1 among its options by their weights, what may be left out is left out half of the time.
  it.each([
    [['public <said> = trim one;'], { 'trim one': 1 }],
    [['public <said> = (trim | fat) one;'], { 'trim one': 0.5, 'fat one': 0.5 }],
    [['public <said> = /3/ trim | /1/ fat;'], { trim: 0.75, fat: 0.25 }],
    [['public <said> = trim [one];'], { trim: 0.5, 'trim one': 0.5 }],
    [['public <said> = trim [one | /3/ two];'], { trim: 0.5, 'trim one': 0.125, 'trim two': 0.375 }],
    [['public <said> = [the] trim;'], { trim: 0.5, 'the trim': 0.5 }],
    [
      ['public <said> = /1/ <k> | /1e-1/ <n>;', '<k> = fat <n>;', '<n> = (one | two);'],
      { 'fat one': 0.454545, 'fat two': 0.454545, one: 0.045455, two: 0.045455 },
    ],
    // Two ways to the same words: the likelier counts, as the recogniser takes the best path.
    [['public <said> = one | one | two;'], { one: 0.333333, two: 0.333333 }],
  ])('%s', (rules, sentences) => {
    expect(sentencesOf(automaton(grammar(...rules)))).toEqual(sentences);
  });

  it('has one state for what ends alike', () => {
    const rules = ['public <said> = trim <n> | fat <n> pounds | bone <n>;', '<n> = (one | two);'];
    // The start; behind trim or bone; behind fat; behind its number; the end.
    expect(automaton(grammar(...rules)).states).toBe(5);
  });

  it('is refused where it has no rule of a name', () => {
    expect(() => automaton(grammar('public <said> = trim <n>;'))).toThrow('<n>');
    expect(() => automaton(grammar('<said> = trim;'))).toThrow('public');
  });
});

describe('the grammar of the ear', () => {
  const { grammar: text } = expected();
  const made = automaton(text);

  it('lets through what the grammar lets through', () => {
    const draw = seeded(21);
    const lines = Array.from({ length: 2000 }, () => sentenceOf(text, draw));
    expect(lines.filter((line) => !takes(made, line))).toEqual([]);
  });

  it.each(['trim', 'trim pounds one', 'one point two', 'done done', 'ribeye at seven'])(
    'lets through no "%s"',
    (line) => {
      expect(takes(made, line)).toBe(false);
    },
  );

  it('is small, which is what it is for', () => {
    expect(made.states).toBeLessThan(400);
  });
});
