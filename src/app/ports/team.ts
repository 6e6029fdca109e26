// The port to who may talk to a kitchen, and as what.
import type { Role } from '../../core/role.ts';
import type { KitchenId } from './store.ts';

export interface Member {
  /** The chat service's number of a person; names are for the eye only. */
  readonly person: number;
  /** Unique in the kitchen. */
  readonly name: string;
  readonly role: Role;
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
  /** Letters that wait for the person are dropped. */
  | { readonly is: 'removed'; readonly kitchen: KitchenId; readonly person: number };

export interface Team {
  member(kitchen: KitchenId, person: number): Promise<Member | undefined>;
  members(kitchen: KitchenId): Promise<readonly Member[]>;
  /** Undefined where it is not there, spent, or expired. */
  invite(kitchen: KitchenId, hash: string, at: string): Promise<Invite | undefined>;
  /** The owner that the settings name; a member already is made one. */
  appoint(kitchen: KitchenId, owner: Member): Promise<void>;
  /** The one claim of a kitchen that nobody owns; an earlier one is void. */
  replaceClaim(kitchen: KitchenId, claim: Invite): Promise<void>;
}
