// The grammar of the ear, made from the sentences of the language and the kitchen's names, narrowed by what the talk is
// about. Written in the JSpeech Grammar Format (W3C note of 2000-06-05), which recognisers read.
import type { Language } from '../language.ts';
import type { Node, Shared } from '../template.ts';
import { literalWords, parseTemplate } from '../template.ts';
import { type Branches, branches } from './branches.ts';
import type { Ear, EarKind } from './ear.ts';

/** Where the talk stands: no test is open, one is, or a question waits; undefined where nobody knows. */
export type Stage = 'idle' | 'open' | 'asked' | undefined;

export interface Listening {
  readonly stage: Stage;
  /** Names of the kitchen's own, beside the catalogue. */
  readonly items: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  /** What is on the table now; likelier than the rest. */
  readonly onTable: ReadonlySet<string>;
}

export interface Grammar {
  readonly text: string;
  readonly words: ReadonlySet<string>;
  /** The names that are listened for, though they are rare. */
  readonly rare: readonly string[];
}

/** How much less likely a cut is that is neither on the table nor in the kitchen's history nor a common one. */
const RARE = 1e-5;

export function grammarFor(language: Language, ear: Ear, listening: Listening): Grammar {
  const words = new Set<string>();
  const shared: Shared = { rules: ear.rules, dropped: new Set() };
  const forms = new Map(
    Object.entries(ear.slots).map(([type, form]) => [type, /^<(\w+)>$/.exec(form)?.[1] ?? type]),
  );
  const seldom = new Map(Object.entries(ear.seldom).map(([name, less]) => [camel(name), less]));
  const rules = Object.entries(ear.rules).map(([name, form]) => {
    const nodes = parseTemplate(form, { ...shared, rules: ownRules(ear) });
    for (const word of literalWords(nodes)) words.add(word);
    return `<${ruleName(name)}> = ${spelled(nodes, seldom)};`;
  });
  const kinds = Object.entries(ear.kinds).flatMap(([intent, kind]) => {
    const less = likelihoodIn(kind, listening.stage);
    const answering = listening.stage === 'asked';
    const wanted = { intent, kind, formOf: (type: string) => forms.get(type), answering };
    const found = less > 0 ? branches([language.start], wanted) : undefined;
    if (found === undefined) return [];
    const article = kind.article === true ? '[the] ' : '';
    if (kind.article === true) words.add('the');
    return [{ less, name: `k_${intent}`, text: written(found, words, { article, rare: kind.rare }) }];
  });
  const names = [nameRule('item', language, ear, listening), nameRule('part', language, ear, listening)];
  for (const { said } of names) for (const name of said) for (const word of name.split(' ')) words.add(word);
  const top = kinds.map(({ less, name }) => `/${less}/ <${name}>`).join(' | ');
  const text = [
    '#JSGF V1.0;',
    'grammar ear;',
    `public <said> = ${top};`,
    ...kinds.map(({ name, text: form }) => `<${name}> = ${form};`),
    ...names.flatMap(({ rules: each }) => each),
    ...rules,
  ].join('\n');
  return { text, words, rare: names.flatMap(({ rare }) => rare) };
}

/** Where nobody knows where the talk stands, there is nothing that a mere answer could answer. */
function likelihoodIn({ less }: EarKind, stage: Stage): number {
  if (stage !== undefined) return less[stage] ?? 1;
  return less.idle === 0 && less.open === 0 ? 0 : (less.alone ?? 1);
}

/** Rules refer to each other by name in the grammar too, so that none is written out twice. */
const ownRules = (ear: Ear): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.keys(ear.rules).map((name) => [name, `{${camel(name)}}`]));

const camel = (name: string): string => name.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase());
const ruleName = (name: string): string => `r_${camel(name)}`;

type Seldom = ReadonlyMap<string, number>;

function spelled(nodes: readonly Node[], seldom: Seldom): string {
  const parts = nodes.map((node) => {
    switch (node.is) {
      case 'word':
        return node.word;
      case 'slot':
        return `<r_${node.name}>`;
      case 'choice': {
        const options = node.options.filter((option) => option.length > 0);
        const weights = options.map((option) => likelihood(option, seldom));
        const isEven = weights.every((weight) => weight === 1);
        const all = options
          .map((option, at) => `${isEven ? '' : `/${weights[at]}/ `}${spelled(option, seldom)}`)
          .join(' | ');
        return options.length < node.options.length ? `[${all}]` : `(${all})`;
      }
    }
  });
  return parts.join(' ');
}

function likelihood([first, ...more]: readonly Node[], seldom: Seldom): number {
  return first?.is === 'slot' && more.length === 0 ? (seldom.get(first.name) ?? 1) : 1;
}

interface Style {
  readonly article: string;
  readonly rare: boolean;
}

function written({ ends, steps }: Branches, words: Set<string>, style: Style): string {
  const options = steps.map(({ step, isSlot, next }) => {
    if (!isSlot) words.add(step);
    const isName = step === 'item' || step === 'part';
    const rule = isName ? `${style.article}<${style.rare ? 'any' : 'known'}_${step}>` : `<r_${camel(step)}>`;
    return `${isSlot ? rule : step} ${next.steps.length === 0 ? '' : written(next, words, style)}`.trim();
  });
  return ends ? `[${options.join(' | ')}]` : `(${options.join(' | ')})`;
}

function nameRule(
  kind: 'item' | 'part',
  language: Language,
  ear: Ear,
  { items, parts, onTable }: Listening,
): { readonly rules: readonly string[]; readonly said: readonly string[]; readonly rare: readonly string[] } {
  const own = kind === 'item' ? items : parts;
  const listed = language.catalogue[kind === 'item' ? 'items' : 'parts'].map(({ name }) => name);
  const also = ear.alsoSaid.filter((phrase) =>
    listed.includes(language.names[kind].joined.get(phrase.replaceAll(' ', '')) ?? ''),
  );
  const said = [...new Set([...listed, ...own, ...also])].filter((name) => /^[a-z' ]+$/.test(name));
  const isKnown = (name: string): boolean => onTable.has(name) || own.has(name) || ear.often.includes(name);
  const known = said.filter(isKnown);
  const rare = said.filter((name) => !isKnown(name));
  const rules = [
    `<known_${kind}> = ${known.join(' | ')};`,
    `<any_${kind}> = ${[...known.map((name) => `/1/ ${name}`), ...rare.map((name) => `/${RARE}/ ${name}`)].join(' | ')};`,
  ];
  return { rules, said, rare };
}
