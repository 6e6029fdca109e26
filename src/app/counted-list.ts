// "12 steaks 16.2 15.9 16.4": how many there are, and the weights of some: two entries in one sentence.
import type { Said } from '../language/parse.ts';

/** The count (and the size) as an entry of its own before the list; anything else as it was said. */
export function withCountApart(said: Said): readonly Said[] {
  const { count, each, ...listed } = said.slots;
  if (said.kind !== 'portionWeights' || count === undefined || said.doubt !== undefined) return [said];
  const slots = { count, ...(each === undefined ? {} : { each }), ...only(listed, 'item') };
  return [
    { ...said, kind: 'portions', slots },
    { ...said, slots: listed },
  ];
}

const only = (slots: Said['slots'], name: string): Said['slots'] =>
  slots[name] === undefined ? {} : { [name]: slots[name] };
