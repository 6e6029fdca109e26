// A turn is stored whole, once, and comes back as it was.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../../../src/core/decimal.ts';
import type { Opened } from './opened.ts';
import {
  AT,
  GRAMS,
  LEDGER,
  opening,
  POOL,
  QUESTION,
  RECEIVED,
  recorded,
  SETTINGS,
  TRIM,
  turn,
} from './samples.ts';

export function turnsContract(opened: Opened): void {
  describe('turns', () => {
    it('gives back every kind of value after a restart, decimals to the last place', async () => {
      const facts = [
        recorded(RECEIVED, { test: 1, item: 'ribeye' }),
        recorded(
          { type: 'listed', eachGrams: [decimal('453.59237'), decimal('0.10')] },
          { test: 1, item: 'ribeye' },
        ),
        recorded({ type: 'corrected', target: 'm0', by: TRIM }, { test: 1, item: 'ribeye' }),
      ];
      const views = {
        tests: [{ id: 1, item: 'ribeye', status: 'open', openedAt: AT } as const],
        lots: [],
        memory: [['price:ribeye', LEDGER] as const],
        pools: [['ribeye', POOL] as const],
        names: [['item', 'ribeye'] as const, ['part', 'trim'] as const],
      };
      await opened.store.append(turn('m1', { facts, views, question: QUESTION }));
      await opened.reopen();
      expect(await opened.store.load('home')).toEqual({
        settings: SETTINGS,
        openTests: [facts],
        lastTest: 1,
        lots: [],
        lastLot: 0,
        memory: views.memory,
        pools: views.pools,
        names: views.names,
        questions: [['lead', QUESTION]],
      });
      expect(await opened.store.views('home')).toEqual(views);
    });

    it('gives decimals back as decimals that reckon', async () => {
      await opened.store.append(opening('m1', 1));
      const [fact] = await opened.wholeLog('home');
      expect(fact?.fact.type === 'received' && fact.fact.grams.minus(GRAMS).isZero()).toBe(true);
    });

    it('leaves out what a fact does not have', async () => {
      await opened.store.append(
        turn('m1', { facts: [recorded({ type: 'tared', container: 'tub', grams: GRAMS })] }),
      );
      const [fact] = await opened.wholeLog('home');
      expect(Object.keys(fact ?? {}).sort()).toEqual(['at', 'entry', 'fact', 'speaker']);
    });

    it('keeps a turn without facts, so that its reply can be given again', async () => {
      await opened.store.append(
        turn('m1', { text: 'status', outcome: 'answered', reply: 'nothing is open' }),
      );
      expect(await opened.store.replyTo('home', 'm1')).toBe('nothing is open');
      expect(await opened.store.append(turn('m1'))).toBe('seen');
    });

    it('has no reply to a message that it never saw', async () => {
      expect(await opened.store.replyTo('home', 'm1')).toBeUndefined();
    });

    it('sees a message that comes again and changes nothing, whatever it says now', async () => {
      expect(await opened.store.append({ ...opening('m1', 1), question: QUESTION })).toBe('stored');
      const before = await opened.everythingOf('home');
      const again = { ...opening('m1', 2, 'striploin'), reply: 'another reply', question: null };
      expect(await opened.store.append(again)).toBe('seen');
      await opened.reopen();
      expect(await opened.store.append(again)).toBe('seen');
      expect(await opened.everythingOf('home')).toEqual(before);
      expect(await opened.store.replyTo('home', 'm1')).toBe('trim 1.1 lb');
    });

    it('stores nothing of a turn that fails at its last row', async () => {
      await opened.store.append(opening('m1', 1));
      const before = await opened.everythingOf('home');
      const unwritable = { ...QUESTION, wants: { held: { kind: 'weigh', no: () => 'data' }, slot: 'item' } };
      const broken = { ...opening('m2', 2), question: unwritable };
      broken.views = {
        ...broken.views,
        lots: [],
        memory: [['price:ribeye', LEDGER]],
        names: [['item', 'ribeye']],
      };
      await expect(opened.store.append(broken)).rejects.toThrow();
      expect(await opened.everythingOf('home')).toEqual(before);
      expect(await opened.store.append(opening('m2', 2))).toBe('stored');
    });

    it('stores turns that are given at once, one after the other', async () => {
      const given = Array.from({ length: 50 }, (_, index) => opening(`m${index}`, index + 1));
      await Promise.all(given.map((each) => opened.store.append(each)));
      expect((await opened.wholeLog('home')).map(({ test }) => test)).toEqual(
        given.map((_, index) => index + 1),
      );
    });
  });
}
