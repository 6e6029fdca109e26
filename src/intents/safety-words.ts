// The facts of grinding, cooking and cooling in a few words.
import type { Label } from '../core/label.ts';
import type { PlainFact } from '../core/facts.ts';
import { list, name, type Reply, say, temperature, weight } from '../core/reply.ts';
import { binnedWords } from './discard.ts';
import { whatWords } from './reading.ts';

type SafetyFact = Extract<
  PlainFact,
  {
    type:
      | 'ground'
      | 'sourced'
      | 'carriedOver'
      | 'cleaned'
      | 'batchBegun'
      | 'temperatureRead'
      | 'thermometerChecked'
      | 'coolingBegun'
      | 'lotEnded'
      | 'batchEnded'
      | 'binned';
  }
>;

export function safetyWords(fact: SafetyFact): Reply {
  switch (fact.type) {
    case 'ground':
      return fact.grams === undefined
        ? say('grinding', { part: name(fact.part) })
        : say('grinding-weighed', { part: name(fact.part), weight: weight(fact.grams) });
    case 'sourced':
      return sourceWords(fact);
    case 'carriedOver':
      return carriedWords(fact);
    case 'cleaned':
      return say(fact.before === true ? 'grinder-cleaned-before' : 'grinder-cleaned');
    case 'batchBegun':
      return say('batch-begun');
    case 'temperatureRead':
      return say('reading', { what: list([whatWords(fact)]), degrees: temperature(fact.degreesF) });
    case 'thermometerChecked':
      return say('thermometer-read', { point: fact.point, degrees: temperature(fact.degreesF) });
    case 'coolingBegun':
      return say('cooling-of', { what: name(fact.what) });
    case 'batchEnded':
      return say('batch-thrown');
    case 'binned':
      return binnedWords(fact);
    case 'lotEnded':
      return say(`lot-${fact.how}`);
  }
}

/** What was said of the label. */
export function sourceWords({ supplierLot, establishment, supplier, produced }: Label): Reply {
  const words: Reply[] = [];
  if (supplierLot !== undefined) words.push(say('supplier-lot', { number: supplierLot }));
  if (establishment !== undefined) words.push(say('establishment', { number: establishment }));
  if (supplier !== undefined) words.push(say('from-supplier', { supplier: name(supplier) }));
  if (produced !== undefined) words.push(say('produced', { date: produced }));
  return say('line', { of: list(words) });
}

export const carriedWords = ({
  none,
  grams,
}: {
  none: boolean;
  grams?: Parameters<typeof weight>[0];
}): Reply =>
  none
    ? say('carried-none')
    : grams === undefined
      ? say('carried-over')
      : say('carried-weight', { weight: weight(grams) });
