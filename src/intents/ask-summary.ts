// "how did we do today": the summary of a day, a week or a month, at any time.
import type { EntryOf } from '../core/entry.ts';
import { say } from '../core/reply.ts';
import { answered, type Intent } from './intent.ts';
import { summaryLines } from './summary-lines.ts';

export const askSummary: Intent<'askSummary'> = {
  slots: ['period'],
  decide: ({ kitchen, days, duesOf }, { period }: EntryOf<'askSummary'>) =>
    answered(say(`summary-${period}`), ...(days === undefined ? [] : summaryLines(kitchen, days, duesOf))),
};
