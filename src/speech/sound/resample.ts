// Between the rates of recordings and of recognisers. What lies above half the lower rate is taken out first: it would
// come back as noise among the sounds of speech.
import { SAMPLES_PER_SECOND } from '../../app/ports/speech.ts';

/** Taps on each side of the middle at 48,000 a second; with a Blackman window some -74 dB from 8.6 kHz up. */
const SIDE_AT_48 = 63;
const CUT_HZ = 7400;

/** The weight of a sample that lies t samples away, of those that fall within the cut. */
function weightAt(t: number, cut: number, side: number): number {
  const sinc = t === 0 ? cut : Math.sin(Math.PI * cut * t) / (Math.PI * t);
  const x = (Math.PI * t) / (side + 1);
  return sinc * (0.42 + 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x));
}

/** To 16,000 samples a second, by a windowed sinc around each new sample. */
export function resampled(samples: Float32Array, rate: number): Float32Array {
  if (rate === SAMPLES_PER_SECOND) return samples;
  const step = rate / SAMPLES_PER_SECOND;
  const side = Math.ceil((SIDE_AT_48 * rate) / 48_000);
  const cut = Math.min(1, (2 * CUT_HZ) / rate);
  const length = Math.floor(samples.length / step);
  const weights = new Map<number, Float32Array>();
  return Float32Array.from({ length }, (_, at) => {
    const middle = Math.floor(at * step + 1e-9);
    const offset = Math.round((at * step - middle) * 1000) / 1000;
    const taps = weights.get(offset) ?? tapsAt(offset, cut, side);
    weights.set(offset, taps);
    let sum = 0;
    for (let tap = 0; tap < taps.length; tap += 1)
      sum += (taps[tap] ?? 0) * (samples[middle + tap - side] ?? 0);
    return sum;
  });
}

function tapsAt(offset: number, cut: number, side: number): Float32Array {
  const taps = Float32Array.from({ length: 2 * side + 1 }, (_, tap) =>
    weightAt(tap - side - offset, cut, side),
  );
  const sum = taps.reduce((all, each) => all + each, 0);
  return taps.map((each) => each / sum);
}
