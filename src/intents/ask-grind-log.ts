// "grind log": the record of the newest lots, field by field; what was not said stands as not said.
import { type Lot } from '../core/lots.ts';
import { list, moment, name, type Reply, say, temperature, weight } from '../core/reply.ts';
import { answered, type Intent, refused } from './intent.ts';
import { carriedWords, sourceWords } from './safety-words.ts';

const LOTS_SHOWN = 3;

export const askGrindLog: Intent<'askGrindLog'> = {
  slots: [],
  decide: ({ kitchen }) => {
    const lots = [...kitchen.lots.values()].filter(({ status }) => status !== 'dropped').sort((a, b) => b.id - a.id);
    if (lots.length === 0) return refused(say('no-lots'));
    return answered(...lots.slice(0, LOTS_SHOWN).flatMap(logLines), say('source-log'), say('check-code'));
  },
};

const endWords = (how: Lot['how'] = 'used'): Reply => say(`lot-${how}`);
const orNot = (of: readonly Reply[]): ReturnType<typeof list> => list(of.length === 0 ? [say('not-said')] : of);
const at = (instant: string): Reply => say('line', { of: moment(instant) });

/** The fields in the order of 9 CFR 320.1(b)(4), then the cooking. */
function logLines(lot: Lot): readonly Reply[] {
  const { id, part, grams, openedAt, openedBy, status, how, from, sources, carriedOver, cleanedBefore, cleanedAfter, batches } = lot;
  const state = status === 'open' ? say('lot-open') : endWords(how);
  const amount = grams === undefined ? say('no-weight') : say('weight', { weight: weight(grams) });
  const materials = from.map(({ item, test, supplier }) => say(supplier === undefined ? 'log-material' : 'log-material-from', { item: name(item), part: name(part), test, supplier: name(supplier ?? '') }));
  const readings = batches.flatMap((each, index) => each.readings.map((reading) => readingWords(reading, index + 1)));
  return [
    say('log-lot', { lot: id, at: moment(openedAt), by: name(openedBy), part: name(part), amount: list([amount]), state: list([state]) }),
    say('log-materials', { of: orNot(materials) }),
    say('log-labels', { of: orNot(sources.map(sourceWords)) }),
    say('log-carried', { of: orNot(carriedOver === undefined ? [] : [carriedWords(carriedOver)]) }),
    say('log-cleaned', { before: orNot(cleanedBefore === undefined ? [] : [at(cleanedBefore)]), after: orNot(cleanedAfter.map(at)) }),
    say('log-readings', { of: orNot(readings) }),
  ];
}

const readingWords = ({ at: when, degreesF, passed }: Lot['batches'][number]['readings'][number], batch: number): Reply =>
  say(passed ? 'log-passed' : 'log-under', { batch, degrees: temperature(degreesF), at: moment(when) });
