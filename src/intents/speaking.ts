// "speak when I speak": when answers are read out to the speaker. Each person's own choice, in any role.
import type { EntryOf } from '../core/entry.ts';
import { aloudTo } from '../core/heard-out.ts';
import { say } from '../core/reply.ts';
import { answered, type Intent, recorded } from './intent.ts';

export const speaking: Intent<'speaking'> = {
  slots: ['when'],
  decide: ({ kitchen, speaker }, { when }: EntryOf<'speaking'>) => {
    const words = say('aloud', { when });
    if (aloudTo(kitchen.memory, speaker) === when) return answered(words);
    return recorded([{ fact: { type: 'voiceChosen', when } }], () => ({ say: [words] }));
  },
};
