// Groups: the bot stays where an owner has brought it, and leaves where somebody else has.
import type { NewLetter } from '../../app/ports/mailbox.ts';
import { say } from '../../core/reply.ts';
import { type Desk, done, letters } from './desk.ts';
import { fleeting, mayAnswer } from './strangers.ts';

export async function joinGroup(
  desk: Desk,
  update: number,
  { chat, by }: { readonly chat: number; readonly by: number },
): Promise<void> {
  const known = await desk.post.groupOf(desk.bot, chat);
  if (known !== undefined) return desk.post.settle(done(desk, update, []));
  const member = await desk.post.memberOf(by);
  if (member?.role !== 'owner') return leaveGroup(desk, update, chat);
  const change = { is: 'groupJoined', kitchen: member.kitchen, chat } as const;
  desk.log.info({}, 'group joined');
  await desk.post.settle(
    done(desk, update, letters(chat, desk.words(say('telegram-group-joined'))), { change }),
  );
}

export async function leaveGroup(desk: Desk, update: number, chat: number): Promise<void> {
  const leave: NewLetter = { chat, kind: 'leave', text: '' };
  const told = mayAnswer(desk, chat) ? [...letters(chat, desk.words(say('telegram-group'))), leave] : [];
  await desk.post.settle(done(desk, update, fleeting(told), { fromStranger: true }));
}
