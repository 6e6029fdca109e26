// What every store must do, whatever is behind it: it passes when these cases pass on a real database.
import { describe } from 'vitest';
import { kitchensContract } from './store/kitchens.ts';
import { lotsContract } from './store/lots.ts';
import { logContract } from './store/log.ts';
import { namesContract } from './store/names.ts';
import { type Database, openedForEach } from './store/opened.ts';
import { questionsContract } from './store/questions.ts';
import { readModelsContract } from './store/read-models.ts';
import { turnsContract } from './store/turns.ts';
import { twoKitchensContract } from './store/two-kitchens.ts';

export function storeContract(name: string, newDatabase: () => Promise<Database>): void {
  describe(name, () => {
    const opened = openedForEach(newDatabase);
    kitchensContract(opened);
    turnsContract(opened);
    lotsContract(opened);
    logContract(opened);
    readModelsContract(opened);
    questionsContract(opened);
    twoKitchensContract(opened);
    namesContract(opened);
  });
}
