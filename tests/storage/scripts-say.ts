// What the scripts of this folder write to their parent: a line is out before the next statement runs.
import { writeSync } from 'node:fs';
import { StoreError } from '../../src/app/ports/store.ts';

export function say(line: string | number): void {
  writeSync(1, `${line}\n`);
}

export function sayFault(error: unknown): void {
  say(error instanceof StoreError ? error.fault : String(error));
}
