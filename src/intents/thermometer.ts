// "ice bath 33": whether the thermometer can be trusted.
import type { FactOf } from '../core/facts.ts';
import { CHECK_POINTS, CHECK_TOLERANCE_F } from '../core/heat.ts';
import { type Reply, say, temperature } from '../core/reply.ts';
import { type Intent, recorded } from './intent.ts';

export const thermometer: Intent<'thermometer'> = {
  slots: ['point', 'degrees'],
  decide: (_, { point, degrees }) => {
    const fact = { type: 'thermometerChecked', point, degreesF: degrees } as const;
    return recorded([{ fact }], () => ({ say: checkWords(fact) }));
  },
};

/** Beyond the tolerance it says by how much, and what to do. */
export function checkWords({ point, degreesF }: Pick<FactOf<'thermometerChecked'>, 'point' | 'degreesF'>): readonly Reply[] {
  const wanted = CHECK_POINTS[point];
  const isOff = degreesF.minus(wanted).abs().gt(CHECK_TOLERANCE_F);
  const args = { point, degrees: temperature(degreesF), wanted: temperature(wanted) };
  return [say(isOff ? 'thermometer-off' : 'thermometer-right', args), say(`source-${point}`), say('check-code')];
}
