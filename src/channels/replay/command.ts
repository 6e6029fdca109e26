// `replay SHIFT.yaml [--json]`
import type { OpenScratch } from '../../app/ports/scratch.ts';
import { asChat, play } from './play.ts';
import { readShift, ShiftFault } from './shift-file.ts';

export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Exit status: 0, also where some turns were asked or refused; 2 where the file can't be read. */
export async function replay(
  args: readonly string[],
  open: OpenScratch,
  { out, err }: Output,
): Promise<number> {
  const [path, ...more] = args.filter((arg) => !arg.startsWith('--'));
  const unknown = args.find((arg) => arg.startsWith('--') && arg !== '--json');
  if (path === undefined || more.length > 0 || unknown !== undefined) {
    err('replay SHIFT.yaml [--json]');
    return 2;
  }
  try {
    const played = await play(open, readShift(path));
    out(args.includes('--json') ? JSON.stringify(played) : asChat(played));
    return 0;
  } catch (error) {
    if (!(error instanceof ShiftFault)) throw error;
    err(error.message);
    return 2;
  }
}
