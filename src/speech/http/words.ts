// What such servers write ("Trim, 1.1 pounds.") as it would be typed: the language reads figures and small letters.

/** Lower case, without the marks of written sentences; marks inside of a figure stay. */
export const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.,!?;:]+(?=\s|$)/g, '')
    .replace(/\s+/g, ' ')
    .trim();
