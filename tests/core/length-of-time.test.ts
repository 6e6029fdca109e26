import { describe, expect, it } from 'vitest';
import { lengthOfTime } from '../../src/core/length-of-time.ts';

const MINUTE = 60_000;

describe('how long ago', () => {
  it.each([
    [0, { is: 'minutes', hours: 0, minutes: 0 }],
    [29_000, { is: 'minutes', hours: 0, minutes: 0 }],
    [59 * MINUTE, { is: 'minutes', hours: 0, minutes: 59 }],
    [59.6 * MINUTE, { is: 'hours', hours: 1, minutes: 0 }],
    [270 * MINUTE, { is: 'both', hours: 4, minutes: 30 }],
    [720 * MINUTE, { is: 'hours', hours: 12, minutes: 0 }],
    [749 * MINUTE, { is: 'hours', hours: 12, minutes: 0 }],
    [751 * MINUTE, { is: 'hours', hours: 13, minutes: 0 }],
    [-5 * MINUTE, { is: 'minutes', hours: 0, minutes: 0 }],
  ])('%d ms', (ms, args) => {
    expect(lengthOfTime(ms)).toMatchObject({ of: [{ id: 'length-of-time', args }] });
  });
});
