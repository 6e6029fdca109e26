// "ice bath 33": whether the thermometer can be trusted.
import type { FactOf } from '../core/facts.ts';
import { CHECK_POINTS } from '../core/heat.ts';
import { type Reply, say, temperature } from '../core/reply.ts';
import { isOff } from '../core/thermometer-checks.ts';
import { type Intent, recorded } from './intent.ts';
import { lotAtHand } from './lot-route.ts';

/** It stands in the record of the lot that is open, where one is. */
export const thermometer: Intent<'thermometer'> = {
  slots: ['point', 'degrees'],
  decide: (scene, { point, degrees }) => {
    const fact = { type: 'thermometerChecked', point, degreesF: degrees } as const;
    return recorded([{ lot: lotAtHand(scene)?.id, fact }], () => ({ say: checkWords(fact) }));
  },
};

/** Beyond the tolerance it says by how much, and what to do. */
export function checkWords({
  point,
  degreesF,
}: Pick<FactOf<'thermometerChecked'>, 'point' | 'degreesF'>): readonly Reply[] {
  const wanted = CHECK_POINTS[point];
  const args = { point, degrees: temperature(degreesF), wanted: temperature(wanted) };
  return [
    say(isOff({ point, degreesF }) ? 'thermometer-off' : 'thermometer-right', args),
    say(`source-${point}`),
    say('check-code'),
  ];
}
