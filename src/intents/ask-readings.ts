// "temperature log": what was measured of food, the newest first, and as a file.
import { dateOf, localOf } from '../core/local-time.ts';
import { type Column, fileName, fullName, type TablePaper, type Value } from '../core/paper.ts';
import { type LoggedReading, readingsIn } from '../core/readings-log.ts';
import { list, moment, name, type Reply, say, temperature } from '../core/reply.ts';
import { called } from './called.ts';
import { answered, type Intent, type Scene, withPaper } from './intent.ts';

const READINGS_SHOWN = 12;

export const askReadings: Intent<'askReadings'> = {
  slots: ['format', 'file', 'last'],
  decide: (scene, { format, file, last }) => {
    const readings = readingsIn(scene.kitchen.memory).toReversed();
    const [newest] = readings;
    if (newest === undefined) return answered(say('no-readings'));
    if (last === true) return answered(readingLine(newest), say('check-code'));
    if (file === true || format !== undefined) {
      const table = readingsTable(scene, readings, format ?? 'csv');
      return withPaper(
        table,
        say('readings-file', { count: readings.length, file: name(fullName(table)) }),
        say('check-code'),
      );
    }
    const shown = ofTheDay(scene, readings).slice(0, READINGS_SHOWN);
    return answered(
      say('readings-head', { count: shown.length }),
      ...shown.map(readingLine),
      say('check-code'),
    );
  },
};

/** Those of the newest day on which something was measured. */
function ofTheDay({ kitchen }: Scene, readings: readonly LoggedReading[]): readonly LoggedReading[] {
  const day = ({ at }: LoggedReading): string => dateOf(localOf(Date.parse(at), kitchen.settings.timezone));
  return readings.filter((each) => readings[0] !== undefined && day(each) === day(readings[0]));
}

const readingLine = (reading: LoggedReading): Reply =>
  say('reading-line', {
    at: moment(reading.at),
    what: list([whatOf(reading)]),
    degrees: temperature(reading.degreesF),
    is: list([isOf(reading)]),
  });

const whatOf = ({ what, lot, stage }: LoggedReading): Reply => {
  if (lot !== undefined) return say('grind-number', { lot });
  if (what !== undefined) return say('line', { of: name(what) });
  return say(stage === 'raw' ? 'raw-meat' : 'ground-meat');
};

const isOf = ({ stage, passed, limitF }: LoggedReading): Reply =>
  say('reading-is', { is: limitF === undefined ? 'logged' : `${stage}-${passed ? 'kept' : 'missed'}` });

const FIELDS = ['at', 'what', 'degrees', 'limit', 'is', 'by'] as const;

function readingsTable(
  scene: Scene,
  readings: readonly LoggedReading[],
  format: TablePaper['format'],
): TablePaper {
  const { timezone } = scene.kitchen.settings;
  const columns = FIELDS.map((field): Column => ({
    label: say(`readings-column-${field}`, { timezone: name(timezone) }),
  }));
  const rows = readings.map((reading): readonly Value[] => [
    localOf(Date.parse(reading.at), timezone).replace('T', ' '),
    whatOf(reading),
    temperature(reading.degreesF),
    reading.limitF && temperature(reading.limitF),
    isOf(reading),
    called(scene, reading.by),
  ]);
  return { is: 'table', name: fileName('temperatures'), format, columns, rows };
}
