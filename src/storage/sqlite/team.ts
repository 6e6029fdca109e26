// Members and invites.
import type { Invite, Member, TeamChange } from '../../app/ports/team.ts';
import type { Connection } from './connection.ts';

export function teamReader(db: Connection) {
  const one = db.prepare<[string, number], Member>(
    'SELECT person, name, role FROM member WHERE kitchen = ? AND person = ?',
  );
  const all = db.prepare<[string], Member>(
    'SELECT person, name, role FROM member WHERE kitchen = ? ORDER BY name',
  );
  const open = db.prepare<[string, string, string], Invite>(
    `SELECT hash, role, expires_at AS expiresAt FROM invite
     WHERE kitchen = ? AND hash = ? AND used_by IS NULL AND expires_at > ?`,
  );
  return {
    member: (kitchen: string, person: number) => one.get(kitchen, person),
    members: (kitchen: string) => all.all(kitchen),
    invite: (kitchen: string, hash: string, at: string) => open.get(kitchen, hash, at),
  };
}

/** What happens at the start, outside of any update. */
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
  return {
    appoint: (kitchen: string, { person, name }: Member): void => void appoint.run(kitchen, person, name),
    replaceClaim: (kitchen: string, invite: Invite): void => {
      replace.immediate(kitchen, invite);
    },
  };
}

type Write = (bot: string, change: TeamChange, at: string) => void;

/** Must be called inside a transaction. */
export function teamWriter(db: Connection): Write {
  const invite = db.prepare('INSERT INTO invite (kitchen, hash, role, expires_at) VALUES (?, ?, ?, ?)');
  const join = joiner(db);
  const remove = db.prepare('DELETE FROM member WHERE kitchen = ? AND person = ?');
  const drop = db.prepare(`DELETE FROM outbox WHERE bot = ? AND chat = ? AND state IN ('waiting', 'parked')`);
  return (bot, change, at) => {
    switch (change.is) {
      case 'invited': {
        const { hash, role, expiresAt } = change.invite;
        return void invite.run(change.kitchen, hash, role, expiresAt);
      }
      case 'joined':
        return join(bot, change, at);
      case 'removed':
        remove.run(change.kitchen, change.person);
        return void drop.run(bot, change.person);
    }
  };
}

function joiner(db: Connection): (bot: string, change: TeamChange & { is: 'joined' }, at: string) => void {
  const spend = db.prepare(
    'UPDATE invite SET used_by = ? WHERE kitchen = ? AND hash = ? AND used_by IS NULL AND expires_at > ?',
  );
  const join = db.prepare('INSERT INTO member (kitchen, person, name, role) VALUES (?, ?, ?, ?)');
  return (_, { kitchen, member, invite }, at) => {
    if (spend.run(member.person, kitchen, invite, at).changes === 0) throw new Error('the invite is spent');
    join.run(kitchen, member.person, member.name, member.role);
  };
}
