// English ready for a bare kitchen, as the command `parse` has it without a context: only the words are judged.
import { fileURLToPath } from 'node:url';
import { judgeWords } from '../../src/app/judge-words.ts';
import type { Judged } from '../../src/app/ports/words.ts';
import { loadVoice, plainListener } from '../../src/app/voice.ts';
import type { Settings } from '../../src/core/kitchen.ts';
import type { KitchenUnit } from '../../src/core/quantity.ts';

export const INTENTS = fileURLToPath(new URL('../../intents', import.meta.url));
export const english = loadVoice(INTENTS, 'en');

const settings = (unit: KitchenUnit): Settings => ({
  unit,
  currency: 'USD',
  timezone: 'America/Chicago',
  language: 'en',
  laborAvoidable: true,
});

const listeners = {
  lb: plainListener(english.language, settings('lb')),
  kg: plainListener(english.language, settings('kg')),
};

/** A Friday, 9:00 in Chicago. */
export const NOW = '2026-03-06T15:00:00.000Z';

/** What a line says by itself, and what a careful listener would ask. */
export const judge = (line: string, unit: KitchenUnit = 'lb'): Judged =>
  judgeWords(english, listeners[unit], { settings: settings(unit), line, at: NOW });
