// Sentence templates: words, [optional], (alternatives | of them), {slot} or {name:type}, <shared rule>. Compiled to a small
// automaton that all sentences of a language share: one state, then words and slots that lead on.

export type Node =
  | { readonly is: 'word'; readonly word: string }
  | { readonly is: 'slot'; readonly name: string; readonly type: string }
  | { readonly is: 'choice'; readonly options: readonly (readonly Node[])[] };

export class TemplateError extends Error {}

/** The parts of one template. Throws a TemplateError that says what is wrong in it. */
export function parseTemplate(template: string, shared: Shared, depth = 0): readonly Node[] {
  if (depth > 8) throw new TemplateError('the shared rules refer to themselves');
  const pieces = template.match(/[[\]()|]|\{[^}]*\}|<[^>]*>|[^\s[\]()|{}<>]+/g) ?? [];
  const reader = { pieces, at: 0, shared, depth };
  const options = readOptions(reader, template);
  if (reader.at < pieces.length) throw new TemplateError(`"${pieces[reader.at] ?? ''}" closes nothing`);
  const [only] = options;
  return options.length === 1 && only !== undefined ? only : [{ is: 'choice', options }];
}

/** What all templates of a language share: named rules, and words that are dropped from lines and so from templates. */
export interface Shared {
  readonly rules: Readonly<Record<string, string>>;
  readonly dropped: ReadonlySet<string>;
}

interface Reader {
  readonly pieces: readonly string[];
  at: number;
  readonly shared: Shared;
  readonly depth: number;
}

/** Sequences separated by bars, up to a closing bracket or the end. */
function readOptions(reader: Reader, template: string): readonly (readonly Node[])[] {
  const options: Node[][] = [[]];
  for (;;) {
    const piece = reader.pieces[reader.at];
    if (piece === undefined || piece === ']' || piece === ')') return options;
    reader.at += 1;
    if (piece === '|') options.push([]);
    else options.at(-1)?.push(...readNode(reader, piece, template));
  }
}

function readNode(reader: Reader, piece: string, template: string): readonly Node[] {
  if (piece === '[' || piece === '(') {
    const options = readOptions(reader, template);
    if (reader.pieces[reader.at] !== (piece === '[' ? ']' : ')'))
      throw new TemplateError(`"${piece}" is not closed`);
    reader.at += 1;
    return [{ is: 'choice', options: piece === '[' ? [...options, []] : options }];
  }
  if (piece.startsWith('{')) return [slot(piece)];
  if (piece.startsWith('<')) return rule(reader, piece.slice(1, -1));
  const word = piece.replaceAll("'", '');
  return reader.shared.dropped.has(word) ? [] : [{ is: 'word', word }];
}

function slot(piece: string): Node {
  const found = /^\{([a-zA-Z]+)(?::([a-zA-Z]+))?\}$/.exec(piece);
  if (found === null) throw new TemplateError(`"${piece}" is no slot`);
  const [, name = '', type = name] = found;
  return { is: 'slot', name, type };
}

function rule(reader: Reader, name: string): readonly Node[] {
  const text = Object.hasOwn(reader.shared.rules, name) ? reader.shared.rules[name] : undefined;
  if (text === undefined) throw new TemplateError(`there is no shared rule <${name}>`);
  return parseTemplate(text, reader.shared, reader.depth + 1);
}

/** A state while sentences are added. `jumps` lead on without reading anything. */
export interface Draft<Meaning> {
  readonly words: Map<string, Draft<Meaning>>;
  readonly slots: { readonly name: string; readonly type: string; readonly next: Draft<Meaning> }[];
  readonly jumps: Draft<Meaning>[];
  readonly ends: Meaning[];
}

/** A state of the finished automaton: each word, and each slot of a type, leads to one state. */
export interface State<Meaning> {
  readonly words: ReadonlyMap<string, State<Meaning>>;
  readonly slots: readonly { readonly type: string; readonly leads: readonly Lead<Meaning>[] }[];
  readonly ends: readonly Meaning[];
}
export interface Lead<Meaning> {
  readonly name: string;
  readonly next: State<Meaning>;
}

export const newDraft = <Meaning>(): Draft<Meaning> => ({ words: new Map(), slots: [], jumps: [], ends: [] });

/** Adds a sentence below a state. Equal beginnings share their states. */
export function addSentence<Meaning>(start: Draft<Meaning>, nodes: readonly Node[], meaning: Meaning): void {
  add(start, nodes).ends.push(meaning);
}

function add<Meaning>(start: Draft<Meaning>, nodes: readonly Node[]): Draft<Meaning> {
  return nodes.reduce(
    (state, node) => (node.is === 'choice' ? choose(state, node.options) : step(state, node)),
    start,
  );
}

/** All options lead to one state, from which the sentence goes on. */
function choose<Meaning>(state: Draft<Meaning>, options: readonly (readonly Node[])[]): Draft<Meaning> {
  const join = newDraft<Meaning>();
  for (const option of options) add(state, option).jumps.push(join);
  return join;
}

function step<Meaning>(state: Draft<Meaning>, node: Exclude<Node, { is: 'choice' }>): Draft<Meaning> {
  if (node.is === 'word') {
    const next = state.words.get(node.word) ?? newDraft<Meaning>();
    state.words.set(node.word, next);
    return next;
  }
  const known = state.slots.find((each) => each.name === node.name && each.type === node.type);
  if (known !== undefined) return known.next;
  const next = newDraft<Meaning>();
  state.slots.push({ name: node.name, type: node.type, next });
  return next;
}

/** The automaton without jumps and forks: what the same word or slot leads to from several places is one state. */
export function finish<Meaning>(start: Draft<Meaning>): State<Meaning> {
  const ids = new Map<Draft<Meaning>, number>();
  const idOf = (draft: Draft<Meaning>): number => ids.get(draft) ?? (ids.set(draft, ids.size), ids.size - 1);
  const done = new Map<string, State<Meaning>>();
  const visit = (drafts: readonly Draft<Meaning>[]): State<Meaning> => {
    const all = reachable(drafts);
    const key = [...all]
      .map(idOf)
      .sort((a, b) => a - b)
      .join(' ');
    const known = done.get(key);
    if (known !== undefined) return known;
    const words = new Map<string, State<Meaning>>();
    const slots: { type: string; leads: Lead<Meaning>[] }[] = [];
    done.set(key, { words, slots, ends: [...new Set([...all].flatMap((each) => each.ends))] });
    for (const [word, nexts] of grouped([...all].flatMap((each) => [...each.words])))
      words.set(word, visit(nexts));
    for (const [label, nexts] of grouped(
      [...all].flatMap((each) =>
        each.slots.map(({ type, name, next }) => [`${type} ${name}`, next] as const),
      ),
    )) {
      const [type = '', name = ''] = label.split(' ');
      const lead = { name, next: visit(nexts) };
      const same = slots.find((slot) => slot.type === type);
      if (same === undefined) slots.push({ type, leads: [lead] });
      else same.leads.push(lead);
    }
    return done.get(key) as State<Meaning>;
  };
  return visit([start]);
}

function grouped<Value>(pairs: readonly (readonly [string, Value])[]): ReadonlyMap<string, Value[]> {
  const groups = new Map<string, Value[]>();
  for (const [key, value] of pairs) {
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [value]);
    else group.push(value);
  }
  return groups;
}

function reachable<Meaning>(drafts: readonly Draft<Meaning>[]): ReadonlySet<Draft<Meaning>> {
  const found = new Set(drafts);
  for (const each of found) for (const next of each.jumps) found.add(next);
  return found;
}

/** Every word that some sentence holds literally. */
export function literalWords(nodes: readonly Node[]): readonly string[] {
  return nodes.flatMap((node) =>
    node.is === 'word' ? [node.word] : node.is === 'choice' ? node.options.flatMap(literalWords) : [],
  );
}
