// Who somebody is in a kitchen, and what that lets them do.
import type { Settings } from './kitchen.ts';

export type Role = 'owner' | 'lead' | 'cutter';

/** Costs and verdicts are for the lead and the owner, unless the kitchen has opened them. */
export const seesCosts = (role: Role, { cuttersSeeCosts }: Pick<Settings, 'cuttersSeeCosts'>): boolean =>
  role !== 'cutter' || cuttersSeeCosts === true;

/** The kitchen's own settings are changed by those who run it. */
export const mayChangeSettings = (role: Role): boolean => role !== 'cutter';
