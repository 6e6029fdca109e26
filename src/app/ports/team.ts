// The port to who may talk to a kitchen, as what, and where. A person belongs to one kitchen, a group too.
import type { Role } from '../../core/role.ts';
import type { KitchenId } from './store.ts';

export interface Member {
  /** The chat service's number of a person; names are for the eye only. */
  readonly person: number;
  /** Unique in the kitchen. */
  readonly name: string;
  readonly role: Role;
}

export interface Membership extends Member {
  readonly kitchen: KitchenId;
}

export interface Invite {
  /** Of the code, which is kept nowhere. */
  readonly hash: string;
  readonly role: Role;
  readonly expiresAt: string;
}

export type TeamChange =
  | { readonly is: 'invited'; readonly kitchen: KitchenId; readonly invite: Invite }
  /** Spends the invite; throws where it is spent or expired. */
  | { readonly is: 'joined'; readonly kitchen: KitchenId; readonly member: Member; readonly invite: string }
  /** Letters that wait for the person are dropped, and their buttons mean nothing any more. */
  | { readonly is: 'removed'; readonly kitchen: KitchenId; readonly person: number }
  | { readonly is: 'groupJoined'; readonly kitchen: KitchenId; readonly chat: number }
  | { readonly is: 'groupLeft'; readonly chat: number }
  /** The same group under another number: its cards, buttons and letters go along. */
  | { readonly is: 'groupMoved'; readonly from: number; readonly to: number };

export interface Team {
  /** Of whatever kitchen the person is. */
  memberOf(person: number): Promise<Membership | undefined>;
  members(kitchen: KitchenId): Promise<readonly Member[]>;
  /** Undefined where it is not there, spent, or expired. */
  invite(hash: string, at: string): Promise<(Invite & { readonly kitchen: KitchenId }) | undefined>;
  /** The owner that the settings name; a member already is made one. Throws for a member of another kitchen. */
  appoint(kitchen: KitchenId, owner: Member): Promise<void>;
  /** Known by their number alone until now. */
  rename(kitchen: KitchenId, member: Pick<Member, 'person' | 'name'>): Promise<void>;
  /** The one claim of a kitchen that nobody owns; an earlier one is void. */
  replaceClaim(kitchen: KitchenId, claim: Invite): Promise<void>;
  /** The kitchen of a group that the bot is in. */
  groupOf(bot: string, chat: number): Promise<KitchenId | undefined>;
  /** What changes outside of any update: a group that the service says has moved. */
  moveGroup(bot: string, from: number, to: number): Promise<void>;
}
