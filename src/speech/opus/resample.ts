// Between the rates of Opus and of recognisers. What lies above half the lower rate is taken out first: it would come
// back as noise among the sounds of speech.

/** Taps on each side of the middle; with a Blackman window some -74 dB from 8.6 kHz up. */
const SIDE = 63;
const CUT_HZ = 7400;

function lowPass(rate: number): Float32Array {
  const cut = (2 * CUT_HZ) / rate;
  const taps = Float32Array.from({ length: 2 * SIDE + 1 }, (_, at) => {
    const t = at - SIDE;
    const sinc = t === 0 ? cut : Math.sin(Math.PI * cut * t) / (Math.PI * t);
    const x = (Math.PI * t) / (SIDE + 1);
    return sinc * (0.42 + 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x));
  });
  const sum = taps.reduce((all, each) => all + each, 0);
  return taps.map((each) => each / sum);
}

const DOWN = lowPass(48_000);

/** 48,000 samples a second to 16,000. */
export function toSixteen(samples: Float32Array): Float32Array {
  const padded = new Float32Array(samples.length + 2 * SIDE);
  padded.set(samples, SIDE);
  return Float32Array.from({ length: Math.floor(samples.length / 3) }, (_, at) => {
    let sum = 0;
    for (let tap = 0; tap < DOWN.length; tap += 1) sum += (DOWN[tap] ?? 0) * (padded[at * 3 + tap] ?? 0);
    return sum;
  });
}
