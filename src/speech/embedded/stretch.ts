// The same words a little higher and quicker, or lower and slower, as another voice would say them: a second opinion on
// what was said. What the recogniser hears in all is far likelier right than what it hears in one.

export function faster(samples: Float32Array, times: number): Float32Array {
  return Float32Array.from({ length: Math.floor(samples.length / times) }, (_, at) => {
    const place = at * times;
    const before = Math.floor(place);
    const share = place - before;
    return (samples[before] ?? 0) * (1 - share) + (samples[before + 1] ?? 0) * share;
  });
}
