// What is said about the team, not about meat: whole lines of a verb and a role or a name.
import { z } from 'zod';

const words = z.array(z.string());

export const teamSchema = z.strictObject({
  invite: words,
  remove: words,
  articles: words,
  roles: z.strictObject({ owner: words, lead: words, cutter: words }),
});

export type TeamWords = z.output<typeof teamSchema>;

export type TeamWish =
  | { readonly is: 'invite'; readonly role: keyof TeamWords['roles'] }
  /** The name as said, in lower case: whose it is, or whether it is one, is for those who know the team. */
  | { readonly is: 'remove'; readonly name: string };

/** Undefined where the line is about something else. */
export function readTeamWish(team: TeamWords, line: string): TeamWish | undefined {
  const said = line.toLowerCase().replace(/[.!]$/, '').trim().split(/\s+/).join(' ');
  const invited = after(team.invite, said);
  const role = invited === undefined ? undefined : roleIn(team, after(team.articles, invited) ?? invited);
  if (role !== undefined) return { is: 'invite', role };
  const name = after(team.remove, said);
  return name === undefined ? undefined : { is: 'remove', name };
}

/** The rest of a line that begins with one of these. */
function after(beginnings: readonly string[], said: string): string | undefined {
  const found = beginnings.find((words) => said.startsWith(`${words} `));
  return found === undefined ? undefined : said.slice(found.length + 1);
}

const roleIn = ({ roles }: TeamWords, said: string): keyof TeamWords['roles'] | undefined =>
  (['owner', 'lead', 'cutter'] as const).find((role) => roles[role].includes(said));
