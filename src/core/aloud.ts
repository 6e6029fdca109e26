// When answers are read out to a speaker, beside their text: each person's own choice.

/** `heard`: only to what was spoken. */
export const ALOUD = ['always', 'heard', 'never'] as const;

export type Aloud = (typeof ALOUD)[number];
