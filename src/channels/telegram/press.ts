// A button that was pressed: good once, for who may press it, while it means something.
import type { Membership } from '../../app/ports/team.ts';
import { name, type Reply, say } from '../../core/reply.ts';
import { type Desk, done } from './desk.ts';
import type { Personal } from './incoming.ts';
import { labelOf } from './keyboard.ts';
import { takePress } from './turns.ts';

interface Press {
  readonly incoming: Personal & { is: 'press' };
  readonly member: Membership;
}

export async function handlePress(desk: Desk, update: number, { incoming, member }: Press): Promise<void> {
  const { chat, person, press, data } = incoming;
  const toast = (reply: Reply): Promise<void> =>
    desk.post.settle(done(desk, update, [{ chat, kind: 'toast', press, text: desk.words(reply) }]));
  const meaning = await desk.post.meaning(desk.bot, data);
  if (meaning === undefined || meaning.chat !== chat || meaning.kitchen !== member.kitchen)
    return toast(say('press-stale'));
  if (meaning.person !== undefined && meaning.person !== person) {
    const whose = (await desk.post.members(member.kitchen)).find((each) => each.person === meaning.person);
    return toast(say('press-not-yours', { name: name(whose?.name ?? '') }));
  }
  const { action, scope } = meaning;
  switch (action.is) {
    case 'again': {
      const told = [{ chat, kind: 'toast', press, text: '' }] as const;
      return desk.post.settle(done(desk, update, told, { again: chat }));
    }
    case 'entry': {
      const label = labelOf(desk, action.entry);
      return takePress(desk, update, { incoming, member, entry: action.entry, label, scope });
    }
  }
}
