// "thermometer log": the newest checks, and which were off.
import { type Reply, list, moment, say, temperature } from '../core/reply.ts';
import type { Check } from '../core/lots.ts';
import { checksIn, isOff } from '../core/thermometer-checks.ts';
import { answered, type Intent } from './intent.ts';

const CHECKS_SHOWN = 10;

export const askThermometerLog: Intent<'askThermometerLog'> = {
  slots: [],
  decide: ({ kitchen }) => {
    const checks = checksIn(kitchen.memory).slice(-CHECKS_SHOWN).toReversed();
    if (checks.length === 0) return answered(say('no-checks'), say('source-ice'), say('check-code'));
    return answered(
      say('log-checks-head', { count: checks.length }),
      ...checks.map(checkLine),
      say('source-ice'),
      say('check-code'),
    );
  },
};

const checkLine = ({ at, point, degreesF }: Check): Reply =>
  say('on-date', { date: moment(at), of: list([checkSaid({ point, degreesF })]) });

export const checkSaid = (check: Pick<Check, 'point' | 'degreesF'>): Reply =>
  say(isOff(check) ? 'thermometer-was-off' : 'thermometer-was-right', {
    point: check.point,
    degrees: temperature(check.degreesF),
  });
