// "12 steaks 16.2 15.9 16.4": how many there are, and the weights of some: two entries in one sentence.
import type { Said } from '../language/parse.ts';

/** The count with what was said of it as an entry of its own before the list; anything else as it was said. */
export function withCountApart(said: Said): readonly Said[] {
  const { eachList, ...counted } = said.slots;
  if (said.kind !== 'portionWeights' || eachList === undefined || counted['count'] === undefined)
    return [said];
  return [
    { ...said, kind: 'portions', slots: counted },
    { ...said, slots: { eachList } },
  ];
}
