// Sentences that a JSpeech grammar lets through, drawn at random: what the recogniser can hear.

import type { Draw } from '../seeded.ts';

/** Weights are left out of account: what is seldom heard must be read as well. */
export function sentenceOf(grammar: string, draw: Draw): string {
  const rules = new Map(
    [...grammar.matchAll(/^(?:public )?<(\w+)> = (.*);$/gm)].map(([, name = '', form = '']) => [name, form]),
  );
  const said = expand(tokensOf(rules.get('said') ?? ''), { rules, draw });
  return said.replace(/ +/g, ' ').trim();
}

interface Grammar {
  readonly rules: ReadonlyMap<string, string>;
  readonly draw: Draw;
}

const tokensOf = (form: string): readonly string[] =>
  form.replace(/\/[\d.e-]+\//g, ' ').match(/<\w+>|[()[\]|]|[a-z']+/g) ?? [];

function expand(tokens: readonly string[], grammar: Grammar): string {
  const options = split(tokens);
  const chosen = options[grammar.draw(options.length)] ?? [];
  const said: string[] = [];
  for (let at = 0; at < chosen.length; at += 1) {
    const token = chosen[at] ?? '';
    if (token === '(' || token === '[') {
      const end = closing(chosen, at);
      const inner = chosen.slice(at + 1, end);
      if (token === '(' || grammar.draw(2) === 0) said.push(expand(inner, grammar));
      at = end;
    } else if (token.startsWith('<')) {
      said.push(expand(tokensOf(grammar.rules.get(token.slice(1, -1)) ?? ''), grammar));
    } else said.push(token);
  }
  return said.join(' ');
}

function split(tokens: readonly string[]): readonly (readonly string[])[] {
  const options: string[][] = [[]];
  let depth = 0;
  for (const token of tokens) {
    if (token === '(' || token === '[') depth += 1;
    if (token === ')' || token === ']') depth -= 1;
    if (token === '|' && depth === 0) options.push([]);
    else options.at(-1)?.push(token);
  }
  return options;
}

function closing(tokens: readonly string[], from: number): number {
  let depth = 0;
  for (let at = from; at < tokens.length; at += 1) {
    if (tokens[at] === '(' || tokens[at] === '[') depth += 1;
    if (tokens[at] === ')' || tokens[at] === ']') depth -= 1;
    if (depth === 0) return at;
  }
  throw new Error(`no end: ${tokens.join(' ')}`);
}
