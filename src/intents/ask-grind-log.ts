// "grind log": the record of the newest lots, field by field, and of all as a file; what was not said stands as not said.
import { type Batch, type Lot, type Reading } from '../core/lots.ts';
import { fullName } from '../core/paper.ts';
import { list, moment, name, type Reply, say, temperature, weight } from '../core/reply.ts';
import { checkSaid } from './ask-thermometer-log.ts';
import { called } from './called.ts';
import { grindLogTable, MOST_LOTS } from './grind-log-table.ts';
import { type Intent, refused, type Scene, withPaper } from './intent.ts';
import { carriedWords, sourceWords } from './safety-words.ts';

const LOTS_SHOWN = 3;

export const askGrindLog: Intent<'askGrindLog'> = {
  slots: ['format', 'file'],
  decide: (scene, { format = 'csv', file }) => {
    const { lots: all, settings } = scene.kitchen;
    const lots = [...all.values()].filter(({ status }) => status !== 'dropped').sort((a, b) => b.id - a.id);
    if (lots.length === 0) return refused(say('no-lots'));
    const table = grindLogTable(lots, { settings, format, called: (speaker) => called(scene, speaker) });
    const args = { lots: table.rows.length, file: name(fullName(table)) };
    const named = say(lots.length > MOST_LOTS ? 'log-file-newest' : 'log-file', args);
    const shown = file === true ? [] : lots.slice(0, LOTS_SHOWN).flatMap((lot) => logLines(scene, lot));
    return withPaper(table, ...shown, named, say('source-log'), say('check-code'));
  },
};

const orNot = (of: readonly Reply[]): ReturnType<typeof list> =>
  list(of.length === 0 ? [say('not-said')] : of);
const at = (instant: string): Reply => say('line', { of: moment(instant) });

/** The fields in the order of 9 CFR 320.1(b)(4), then the cooking. */
function logLines(scene: Scene, lot: Lot): readonly Reply[] {
  const {
    id,
    part,
    grams,
    openedAt,
    openedBy,
    status,
    how = 'used',
    from,
    sources,
    carriedOver,
    cleanedBefore,
    cleanedBeforeTold,
    cleanedAfter,
    batches,
    checks,
  } = lot;
  const state = status === 'open' ? say('lot-open') : say(`lot-${how}`);
  const amount = grams === undefined ? say('no-weight') : say('weight', { weight: weight(grams) });
  const materials = from.map(({ item, test, supplier, grams: ofTest }) =>
    say('log-material', {
      ...{ item: name(item), part: name(part) },
      of: list([
        ...(ofTest === undefined ? [] : [say('weight', { weight: weight(ofTest) })]),
        say('log-test', { test }),
        ...(supplier === undefined ? [] : [say('line', { of: name(supplier) })]),
      ]),
    }),
  );
  return [
    say('log-lot', {
      lot: id,
      at: moment(openedAt),
      by: called(scene, openedBy),
      part: name(part),
      amount: list([amount]),
      state: list([state]),
    }),
    say('log-materials', { of: orNot(materials) }),
    say('log-labels', { of: orNot(sources.map(sourceWords)) }),
    say('log-carried', { of: orNot(carriedOver === undefined ? [] : [carriedWords(carriedOver)]) }),
    say('log-cleaned', {
      before: orNot([
        ...(cleanedBefore === undefined ? [] : [at(cleanedBefore)]),
        ...(cleanedBeforeTold === undefined ? [] : [say('cleaned-told', { at: moment(cleanedBeforeTold) })]),
      ]),
      after: orNot(cleanedAfter.map(at)),
    }),
    say('log-readings', { of: orNot(batches.flatMap(batchWords)) }),
    ...(checks.length === 0 ? [] : [say('log-checks', { of: list(checks.map(checkSaid)) })]),
  ];
}

const batchWords = ({ readings, thrownAt }: Batch, index: number): readonly Reply[] => [
  ...readings.map((reading) => readingWords(reading, index + 1)),
  ...(thrownAt === undefined ? [] : [say('log-batch-thrown', { batch: index + 1 })]),
];

const readingWords = ({ at: when, degreesF, passed }: Reading, batch: number): Reply =>
  say(passed ? 'log-passed' : 'log-under', { batch, degrees: temperature(degreesF), at: moment(when) });
