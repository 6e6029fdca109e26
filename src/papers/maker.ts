// Makes the files that go with answers. What draws, and what writes tables, is large: each is loaded once somebody wants one.
import type { PaperMaker } from '../app/ports/paper.ts';

export const paperMaker: PaperMaker = {
  sheet: async (table) => (await import('./sheets/sheet.ts')).sheet(table),
  draw: async (picture) => (await import('./pictures/draw.ts')).draw(picture),
};
