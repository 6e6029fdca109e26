// Members, invites and groups.
import type { Invite, Member, Membership, TeamChange } from '../../app/ports/team.ts';
import type { Connection } from './connection.ts';
import { groupWriter } from './groups.ts';

export function teamReader(db: Connection) {
  const one = db.prepare<[number], Membership>(
    'SELECT kitchen, person, name, role FROM member WHERE person = ?',
  );
  const all = db.prepare<[string], Member>(
    'SELECT person, name, role FROM member WHERE kitchen = ? ORDER BY name',
  );
  const open = db.prepare<[string, string], Invite & { kitchen: string }>(
    `SELECT kitchen, hash, role, expires_at AS expiresAt FROM invite
     WHERE hash = ? AND used_by IS NULL AND expires_at > ?`,
  );
  const group = db
    .prepare<[string, number], string>(
      'SELECT kitchen FROM group_chat WHERE bot = ? AND chat = ? AND is_left = 0',
    )
    .pluck();
  return {
    memberOf: (person: number) => one.get(person),
    members: (kitchen: string) => all.all(kitchen),
    invite: (hash: string, at: string) => open.get(hash, at),
    groupOf: (bot: string, chat: number) => group.get(bot, chat),
  };
}

/** What happens outside of any update. */
export function founder(db: Connection) {
  const appoint = db.prepare(
    `INSERT INTO member (kitchen, person, name, role) VALUES (?, ?, ?, 'owner')
     ON CONFLICT (kitchen, person) DO UPDATE SET role = 'owner' WHERE role <> 'owner'`,
  );
  const voidClaims = db.prepare('DELETE FROM invite WHERE kitchen = ? AND claims = 1 AND used_by IS NULL');
  const claim = db.prepare(
    'INSERT INTO invite (kitchen, hash, role, expires_at, claims) VALUES (?, ?, ?, ?, 1)',
  );
  const replace = db.transaction((kitchen: string, { hash, role, expiresAt }: Invite): void => {
    voidClaims.run(kitchen);
    claim.run(kitchen, hash, role, expiresAt);
  });
  const rename = db.prepare('UPDATE member SET name = ? WHERE kitchen = ? AND person = ?');
  const { move } = groupWriter(db);
  const moveAll = db.transaction(move);
  return {
    appoint: (kitchen: string, { person, name }: Member): void => void appoint.run(kitchen, person, name),
    rename: (kitchen: string, { person, name }: Pick<Member, 'person' | 'name'>): void =>
      void rename.run(name, kitchen, person),
    replaceClaim: (kitchen: string, invite: Invite): void => {
      replace.immediate(kitchen, invite);
    },
    moveGroup: (bot: string, from: number, to: number): void => {
      moveAll.immediate(bot, from, to);
    },
  };
}

type Write = (bot: string, change: TeamChange, at: string) => void;

/** Must be called inside a transaction. */
export function teamWriter(db: Connection): Write {
  const invite = db.prepare('INSERT INTO invite (kitchen, hash, role, expires_at) VALUES (?, ?, ?, ?)');
  const join = joiner(db);
  const remove = remover(db);
  const groups = groupWriter(db);
  return (bot, change, at) => {
    switch (change.is) {
      case 'invited': {
        const { hash, role, expiresAt } = change.invite;
        return void invite.run(change.kitchen, hash, role, expiresAt);
      }
      case 'joined':
        return join(change, at);
      case 'removed':
        return remove(bot, change);
      case 'groupJoined':
        return groups.join(bot, change.kitchen, change.chat);
      case 'groupLeft':
        return groups.leave(bot, change.chat);
      case 'groupMoved':
        return groups.move(bot, change.from, change.to);
    }
  };
}

function joiner(db: Connection): (change: TeamChange & { is: 'joined' }, at: string) => void {
  const spend = db.prepare(
    'UPDATE invite SET used_by = ? WHERE kitchen = ? AND hash = ? AND used_by IS NULL AND expires_at > ?',
  );
  const join = db.prepare('INSERT INTO member (kitchen, person, name, role) VALUES (?, ?, ?, ?)');
  return ({ kitchen, member, invite }, at) => {
    if (spend.run(member.person, kitchen, invite, at).changes === 0) throw new Error('the invite is spent');
    join.run(kitchen, member.person, member.name, member.role);
  };
}

/** What waits for the person is dropped with them: it may tell what they must not see any more. */
function remover(db: Connection): (bot: string, change: TeamChange & { is: 'removed' }) => void {
  const member = db.prepare('DELETE FROM member WHERE kitchen = ? AND person = ?');
  const letters = db.prepare(`DELETE FROM outbox WHERE bot = ? AND chat = ? AND state <> 'sending'`);
  const cards = db.prepare('DELETE FROM card WHERE bot = ? AND chat = ?');
  const buttons = db.prepare('DELETE FROM button WHERE bot = ? AND (chat = ? OR person = ?)');
  return (bot, { kitchen, person }) => {
    member.run(kitchen, person);
    letters.run(bot, person);
    cards.run(bot, person);
    buttons.run(bot, person, person);
  };
}
