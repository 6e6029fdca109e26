// What every store of a mailbox and a team must do, whatever is behind it.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Delivery, Mailbox, NewLetter, Notices, Update } from '../../../src/app/ports/mailbox.ts';
import type { Store } from '../../../src/app/ports/store.ts';
import type { Cards, Meaning } from '../../../src/app/ports/cards.ts';
import type { Team } from '../../../src/app/ports/team.ts';
import { AT, opening, QUESTION, SETTINGS } from './store/samples.ts';

export type Post = Store & Mailbox & Team & Cards;

interface Database {
  readonly open: () => Promise<Post>;
  readonly remove: () => Promise<void>;
}

const BOT = '7000000001';
const LATER = '2026-03-06T16:00:00.000Z';

const letter = (chat: number, text: string, more: Partial<NewLetter> = {}): NewLetter => ({
  chat,
  kind: 'message',
  text,
  ...more,
});

const delivery = (update: number, letters: readonly NewLetter[], more: Partial<Delivery> = {}): Delivery => ({
  bot: BOT,
  update,
  end: 'done',
  at: AT,
  letters,
  ...more,
});

const update = (id: number, chat = 1): Update => ({ id, chat, body: `{"update_id":${id}}` });

const NOTICES: Notices = { unknown: 'notice', again: 'Show it again', repeat: '(again)' };

export function mailboxContract(name: string, newDatabase: () => Promise<Database>): void {
  describe(name, () => {
    let database: Database;
    let post: Post;
    const reopen = async (): Promise<void> => {
      await post.close();
      post = await database.open();
    };
    const waiting = async (): Promise<readonly number[]> =>
      (await post.unhandled(BOT, 100)).map(({ id }) => id);
    beforeEach(async () => {
      database = await newDatabase();
      post = await database.open();
      await post.create('home', SETTINGS);
    });
    afterEach(async () => {
      await post.close();
      await database.remove();
    });

    describe('the inbox', () => {
      it('keeps updates in the order of arrival, each number once for its bot', async () => {
        await post.receive(BOT, [update(7), update(5)], AT);
        await post.receive(BOT, [update(5), update(6)], AT);
        await post.receive('8', [update(5)], AT);
        await reopen();
        expect(await waiting()).toEqual([7, 5, 6]);
      });

      it('knows the number of a handled update that comes again', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.settle(delivery(7, []));
        await post.receive(BOT, [update(7)], AT);
        expect(await waiting()).toEqual([]);
      });

      it('has forgotten it when a numbering may have begun anew', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.settle(delivery(7, []));
        await post.receive(BOT, [update(7)], '2026-03-12T15:00:00.000Z');
        expect(await waiting()).toEqual([7]);
      });

      it('counts failures, also over a restart', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.noteFailure(BOT, 7);
        await reopen();
        await post.noteFailure(BOT, 7);
        expect(await post.unhandled(BOT, 1)).toEqual([{ ...update(7), failures: 2 }]);
      });

      it('ends an update with its turn', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.append({ ...opening('m1', 1), delivery: delivery(7, [letter(1, 'trim 1.1 lb')]) });
        await reopen();
        expect(await waiting()).toEqual([]);
        expect(await post.takeLetter(BOT, 1, NOTICES)).toMatchObject({ text: 'trim 1.1 lb' });
      });

      it('leaves it, and posts nothing, where the turn fails at its last row', async () => {
        await post.receive(BOT, [update(7)], AT);
        const held = { kind: 'weigh', no: () => 'data' };
        const question = { ...QUESTION, wants: { held, slot: 'item' } };
        const broken = { ...opening('m1', 1), question, delivery: delivery(7, [letter(1, 'never')]) };
        await expect(post.append(broken)).rejects.toThrow();
        expect(await waiting()).toEqual([7]);
        expect(await post.chatsWithLetters(BOT)).toEqual([]);
      });

      it('ends it without letters where its turn was seen', async () => {
        await post.append(opening('m1', 1));
        await post.receive(BOT, [update(7)], AT);
        const again = { ...opening('m1', 1), delivery: delivery(7, [letter(1, 'again')]) };
        expect(await post.append(again)).toBe('seen');
        expect(await waiting()).toEqual([]);
        expect(await post.chatsWithLetters(BOT)).toEqual([]);
      });

      it('ends an update once', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.settle(delivery(7, [letter(1, 'once')]));
        await post.settle(delivery(7, [letter(1, 'twice')]));
        expect(await post.takeLetter(BOT, 1, NOTICES)).toMatchObject({ text: 'once' });
        expect(await post.takeLetter(BOT, 1, NOTICES)).toBeUndefined();
      });
    });

    describe('the outbox', () => {
      const posted = async (...letters: readonly NewLetter[]): Promise<void> => {
        await post.receive(BOT, [update(7)], AT);
        await post.settle(delivery(7, letters));
      };
      const take = (chat = 1): Promise<{ seq: number; text: string } | undefined> =>
        post.takeLetter(BOT, chat, NOTICES);
      const seqOf = async (): Promise<number> => (await take())?.seq ?? 0;

      it('gives the letters of a chat in order, each once', async () => {
        await posted(letter(1, 'a'), letter(2, 'b'), letter(1, 'c'));
        expect((await post.chatsWithLetters(BOT)).toSorted()).toEqual([1, 2]);
        expect([(await take())?.text, (await take())?.text, await take()]).toEqual(['a', 'c', undefined]);
      });

      it('forgets what was sent', async () => {
        await posted(letter(1, 'a'));
        await post.endLetter(await seqOf(), 'sent');
        expect(await post.noteInterrupted(BOT)).toBe(0);
        expect(await post.backlog(BOT)).toEqual({ strangers: 0 });
      });

      it('gives the next one of the chat as one ends, where it is asked for', async () => {
        await posted(letter(1, 'a'), letter(2, 'b'), letter(1, 'c'), letter(1, 'd'));
        const ending = { next: NOTICES };
        const next = await post.endLetter(await seqOf(), 'sent', ending);
        expect(next?.text).toBe('c');
        expect(await post.endLetter(next?.seq ?? 0, 'sent')).toBeUndefined();
        expect(await post.endLetter(next?.seq ?? 0, 'sent', ending), 'ended before').toBeUndefined();
        expect((await take())?.text).toBe('d');
        expect((await take(2))?.text).toBe('b');
      });

      it('knows what was taken so as on its way, and puts the notice before what follows one in doubt', async () => {
        await posted(letter(1, 'a'), letter(1, 'b'), letter(1, 'c'));
        expect((await post.endLetter(await seqOf(), 'unknown', { next: NOTICES }))?.text).toBe('notice\nb');
        await reopen();
        expect(await post.noteInterrupted(BOT)).toBe(1);
        const last = await take();
        expect(last?.text).toBe('notice\nc');
        expect(await post.endLetter(last?.seq ?? 0, 'sent', { next: NOTICES })).toBeUndefined();
        expect(await post.endLetter(0, 'sent', { next: NOTICES })).toBeUndefined();
      });

      it('gives again what surely was not sent, before what came after it', async () => {
        await posted(letter(1, 'a'), letter(1, 'b'));
        await post.endLetter(await seqOf(), 'again');
        expect((await take())?.text).toBe('a');
      });

      it('never gives again what was on its way, and puts the notice once before the next', async () => {
        await posted(letter(1, 'a'), letter(1, 'b'), letter(1, 'c'), letter(2, 'd'));
        await take();
        await reopen();
        expect(await post.noteInterrupted(BOT)).toBe(1);
        const next = await take();
        await post.endLetter(next?.seq ?? 0, 'sent');
        expect([next?.text, (await take())?.text, (await take(2))?.text]).toEqual(['notice\nb', 'c', 'd']);
      });

      it('gives the notice again where the letter with it was interrupted too', async () => {
        await posted(letter(1, 'a'), letter(1, 'b'), letter(1, 'c'));
        await post.endLetter(await seqOf(), 'unknown');
        await post.endLetter(await seqOf(), 'unknown');
        expect((await take())?.text).toBe('notice\nc');
      });

      it.each(['again', 'failed'] as const)(
        'gives the notice with the next letter where the one with it ended as %s',
        async (end) => {
          await posted(letter(1, 'a'), letter(1, 'b'), letter(1, 'c'));
          await post.endLetter(await seqOf(), 'unknown');
          await post.endLetter(await seqOf(), end);
          expect((await take())?.text).toBe(end === 'again' ? 'notice\nb' : 'notice\nc');
        },
      );

      it('gives the notice with a file too, and with the next one where that did not arrive', async () => {
        const file = { name: 'a.csv', type: 'text/csv', bytes: new Uint8Array([1]) };
        await posted(letter(1, 'a'), letter(1, 'table', { kind: 'file', file }), letter(1, 'c'));
        await post.endLetter(await seqOf(), 'unknown');
        const sent = await take();
        expect(sent).toMatchObject({ kind: 'file', text: 'notice\ntable', file: { name: 'a.csv' } });
        await post.endLetter(sent?.seq ?? 0, 'unknown');
        expect((await take())?.text).toBe('notice\nc');
      });

      it('gives the notice with an alarm again that may not have arrived', async () => {
        await posted(letter(1, 'a'), letter(1, 'chill it', { alarm: true }));
        await post.endLetter(await seqOf(), 'unknown');
        await post.endLetter(await seqOf(), 'unknown');
        expect((await take())?.text).toBe('notice\n(again) chill it');
      });

      it('repeats only what is harmless', async () => {
        await posted(letter(1, '', { kind: 'leave', fleeting: true }));
        await take();
        await post.noteInterrupted(BOT);
        expect(await take()).toMatchObject({ kind: 'leave' });
      });

      it('repeats an alarm, and says that it may come twice', async () => {
        await posted(letter(1, 'chill it', { alarm: true }));
        await post.endLetter(await seqOf(), 'unknown');
        expect(await take()).toMatchObject({ text: '(again) chill it', alarm: true });
        await post.noteInterrupted(BOT);
        expect((await take())?.text).toBe('(again) chill it');
      });

      it('parks what can never be sent, and tells of a chat once', async () => {
        await posted(letter(1, 'a'), letter(1, 'b'));
        await post.endLetter(await seqOf(), 'failed', { tell: [letter(9, 'told')] });
        await post.endLetter(await seqOf(), 'failed', { tell: [letter(9, 'told again')] });
        expect(await take()).toBeUndefined();
        expect([(await take(9))?.text, await take(9)]).toEqual(['told', undefined]);
      });

      it.each(['unknown', 'failed'] as const)(
        'keeps nothing of a stranger, also where it is %s',
        async (end) => {
          await posted(letter(1, 'a', { fleeting: true }), letter(1, 'b'));
          await post.endLetter(await seqOf(), end, { tell: [letter(9, 'told')] });
          expect((await take())?.text).toBe('b');
          expect(await take(9)).toBeUndefined();
        },
      );

      it('tells the age of what waits, and counts strangers', async () => {
        await post.receive(BOT, [update(7)], AT);
        await post.receive(BOT, [update(8)], LATER);
        await post.settle(delivery(7, [letter(1, 'a')], { fromStranger: true }));
        expect(await post.backlog(BOT)).toEqual({ oldestUpdateAt: LATER, oldestLetterAt: AT, strangers: 1 });
      });
    });

    describe('fairness', () => {
      it('keeps the order of arrival within each chat and between them, however much one has said', async () => {
        const loud = Array.from({ length: 500 }, (_, index) => update(1 + index, 1));
        const calm = [update(1001, 2), update(1002, 3), update(1003, 2), update(1004, 3)];
        await post.receive(BOT, [...loud, ...calm], AT);
        const handled: number[] = [];
        for (let page = await waiting(); page.length > 0; page = await waiting())
          for (const id of page) {
            await post.settle(delivery(id, []));
            handled.push(id);
          }
        expect(handled.filter((id) => id < 1000)).toEqual(loud.map(({ id }) => id));
        expect(handled.filter((id) => id > 1000)).toEqual(calm.map(({ id }) => id));
        expect(handled.indexOf(1004)).toBeLessThan(10);
      });

      it('gives each chat its turn, and one alone all of it', async () => {
        const many = [1, 2, 3, 4, 5, 6, 7].map((id) => update(id, 1));
        await post.receive(BOT, [...many, update(8, 2)], AT);
        expect(await waiting()).toEqual([1, 2, 3, 4, 8]);
        await post.settle(delivery(8, []));
        expect(await waiting()).toEqual([1, 2, 3, 4, 5, 6, 7]);
      });
    });

    describe('the cards', () => {
      const card = { kitchen: 'home', test: 3 };
      const shown = (text: string, isOpen = true): NewLetter =>
        letter(1, text, {
          kind: 'card',
          card: { ...card, isOpen },
          buttons: [[{ label: 'Undo', nonce: 'n' }]],
        });
      const settled = async (id: number, ...letters: readonly NewLetter[]): Promise<void> => {
        await post.receive(BOT, [update(id)], AT);
        await post.settle(delivery(id, letters));
      };
      const take = (): ReturnType<Post['takeLetter']> => post.takeLetter(BOT, 1, NOTICES);
      const sent = async (message?: number): Promise<void> => {
        const taken = await take();
        await post.endLetter(taken?.seq ?? 0, 'sent', message === undefined ? {} : { message });
      };

      it('are sent once, and edited from then on', async () => {
        await settled(1, shown('a'));
        expect((await take())?.stands).toBeUndefined();
        await post.noteInterrupted(BOT);
        await settled(2, shown('b'));
        await sent(77);
        await settled(3, shown('c'));
        expect(await take()).toMatchObject({
          text: 'c',
          stands: 77,
          buttons: [[{ label: 'Undo', nonce: 'n' }]],
        });
        expect(await post.cardAt(BOT, 1, 77)).toEqual(card);
        expect(await post.chatsWithCard(BOT, card)).toEqual([1]);
      });

      it('are shown for the last time where they stand, though an older form was on its way at the end', async () => {
        await settled(1, shown('a'));
        const first = await take();
        await settled(2, shown('b', false));
        await post.endLetter(first?.seq ?? 0, 'sent', { message: 77 });
        expect(await take()).toMatchObject({ text: 'b', stands: 77 });
      });

      it('waits as one, with the newest words', async () => {
        await settled(1, shown('a'), letter(1, 'm'));
        await settled(2, shown('b'));
        expect([(await take())?.text, (await take())?.text, await take()]).toEqual(['b', 'm', undefined]);
      });

      it('are edited again where an edit may not have arrived', async () => {
        await settled(1, shown('a'));
        await sent(77);
        await settled(2, shown('b'));
        await take();
        expect(await post.noteInterrupted(BOT)).toBe(0);
        expect(await take()).toMatchObject({ text: 'b', stands: 77 });
      });

      it('are sent anew where their message is no more', async () => {
        await settled(1, shown('a'));
        await sent(77);
        await settled(2, shown('b'));
        await post.endLetter((await take())?.seq ?? 0, 'gone');
        expect((await take())?.stands).toBeUndefined();
      });

      it('are forgotten when the end of the test was shown', async () => {
        await settled(1, shown('a'));
        await sent(77);
        await settled(2, shown('over', false));
        await sent();
        expect(await post.chatsWithCard(BOT, card)).toEqual([]);
      });

      it('say at once that a message may not have arrived, and send it again when asked', async () => {
        await post.appoint('home', { person: 1, name: 'Ines', role: 'owner' });
        await settled(1, shown('a'));
        await sent(77);
        await settled(2, letter(1, 'result'));
        await take();
        expect(await post.noteInterrupted(BOT)).toBe(1);
        const offered = await take();
        expect(offered).toMatchObject({ kind: 'card', text: 'notice\na', stands: 77 });
        const nonce = offered?.buttons?.at(-1)?.[0]?.nonce ?? '';
        expect(await post.meaning(BOT, nonce)).toMatchObject({
          chat: 1,
          kitchen: 'home',
          action: { is: 'again' },
        });
        await post.endLetter(offered?.seq ?? 0, 'sent');
        await settled(3, shown('b'));
        expect((await take())?.buttons?.at(-1)?.[0]?.nonce).toBe(nonce);
        await post.receive(BOT, [update(4)], AT);
        await post.settle(delivery(4, [], { again: 1 }));
        expect((await take())?.text).toBe('result');
        expect(await post.meaning(BOT, nonce)).toBeUndefined();
      });
    });

    describe('the buttons', () => {
      const meaning: Meaning = {
        ...{ nonce: 'n1', chat: 1, scope: 'card:3', kitchen: 'home', person: 5 },
        action: { is: 'entry', entry: { kind: 'undo', target: 'm1.0' } },
      };

      it('mean what they were made for, until their scope is void', async () => {
        await post.receive(BOT, [update(1), update(2)], AT);
        await post.settle(delivery(1, [], { buttons: { void: [], add: [meaning] } }));
        await reopen();
        expect(await post.meaning(BOT, 'n1')).toEqual(meaning);
        expect(await post.meaning('8', 'n1')).toBeUndefined();
        await post.settle(delivery(2, [], { buttons: { void: [{ chat: 1, scope: 'card:3' }], add: [] } }));
        expect(await post.meaning(BOT, 'n1')).toBeUndefined();
      });

      it('die with the member', async () => {
        await post.receive(BOT, [update(1), update(2)], AT);
        await post.settle(delivery(1, [], { buttons: { void: [], add: [meaning] } }));
        await post.settle(delivery(2, [], { change: { is: 'removed', kitchen: 'home', person: 5 } }));
        expect(await post.meaning(BOT, 'n1')).toBeUndefined();
      });
    });

    describe('the groups', () => {
      const changed = async (id: number, change: Delivery['change']): Promise<void> => {
        await post.receive(BOT, [update(id)], AT);
        await post.settle(delivery(id, [], { change }));
      };
      const isOpen = true;

      it('are of a kitchen until they are left', async () => {
        await changed(1, { is: 'groupJoined', kitchen: 'home', chat: -5 });
        expect(await post.groupOf(BOT, -5)).toBe('home');
        expect(await post.groupOf('8', -5)).toBeUndefined();
        await changed(2, { is: 'groupLeft', chat: -5 });
        expect(await post.groupOf(BOT, -5)).toBeUndefined();
      });

      it.each(['told first', 'left first'])(
        'keep all that is theirs under another number (%s)',
        async (order) => {
          await changed(1, { is: 'groupJoined', kitchen: 'home', chat: -5 });
          await post.receive(BOT, [update(2)], AT);
          const card = { kitchen: 'home', test: 3 };
          await post.settle(
            delivery(2, [letter(-5, 'a', { kind: 'card', card: { ...card, isOpen } }), letter(-5, 'm')]),
          );
          if (order === 'left first') await changed(3, { is: 'groupLeft', chat: -5 });
          await changed(4, { is: 'groupMoved', from: -5, to: -100 });
          await changed(5, { is: 'groupMoved', from: -5, to: -100 });
          expect(await post.groupOf(BOT, -100)).toBe('home');
          expect(await post.groupOf(BOT, -5)).toBeUndefined();
          expect(await post.chatsWithCard(BOT, card)).toEqual([-100]);
          expect((await post.takeLetter(BOT, -100, NOTICES))?.text).toBe('a');
          expect((await post.takeLetter(BOT, -100, NOTICES))?.text).toBe('m');
        },
      );
    });

    describe('the team', () => {
      const invite = { hash: 'h', role: 'cutter', expiresAt: LATER } as const;
      const tobin = { person: 5_000_000_001, name: 'Tobin', role: 'cutter' } as const;
      const ended = async (id: number, change: Delivery['change'], at = AT): Promise<void> => {
        await post.receive(BOT, [update(id)], AT);
        await post.settle(delivery(id, [letter(1, 'told')], { change, at }));
      };

      it('takes in who has an invite, once', async () => {
        await ended(1, { is: 'invited', kitchen: 'home', invite });
        expect(await post.invite('h', AT)).toEqual({ ...invite, kitchen: 'home' });
        await ended(2, { is: 'joined', kitchen: 'home', member: tobin, invite: 'h' });
        expect(await post.memberOf(tobin.person)).toEqual({ ...tobin, kitchen: 'home' });
        expect(await post.invite('h', AT)).toBeUndefined();
        const second = { ...tobin, person: 2, name: 'Second' };
        await expect(
          ended(3, { is: 'joined', kitchen: 'home', member: second, invite: 'h' }),
        ).rejects.toThrow();
        expect(await post.members('home')).toEqual([tobin]);
        expect(await waiting()).toEqual([3]);
      });

      it('takes in nobody by an invite that has expired, or is of another kitchen', async () => {
        await post.create('other', SETTINGS);
        await ended(1, { is: 'invited', kitchen: 'home', invite });
        const joined = { is: 'joined', member: tobin, invite: 'h' } as const;
        await expect(ended(2, { ...joined, kitchen: 'home' }, LATER)).rejects.toThrow();
        await expect(ended(3, { ...joined, kitchen: 'other' })).rejects.toThrow();
        expect(await post.memberOf(tobin.person)).toBeUndefined();
      });

      it('knows a removed member no more, and drops what waited for them', async () => {
        await post.appoint('home', { ...tobin, role: 'owner' });
        await ended(1, undefined);
        await ended(2, { is: 'removed', kitchen: 'home', person: tobin.person });
        expect(await post.members('home')).toEqual([]);
        await ended(3, undefined);
        await post.appoint('home', { ...tobin, person: 1, role: 'owner' });
        await ended(4, { is: 'removed', kitchen: 'home', person: 1 });
        expect((await post.takeLetter(BOT, 1, NOTICES))?.text).toBe('told');
        expect(await post.takeLetter(BOT, 1, NOTICES)).toBeUndefined();
      });

      it('keeps members to their kitchen', async () => {
        await post.create('other', SETTINGS);
        await post.appoint('home', { ...tobin, role: 'owner' });
        expect((await post.memberOf(tobin.person))?.kitchen).toBe('home');
        await expect(post.appoint('other', { ...tobin, role: 'owner' })).rejects.toThrow();
        expect(await post.members('other')).toEqual([]);
      });

      it('has one claim: an earlier one is void', async () => {
        await post.replaceClaim('home', { ...invite, hash: 'first', role: 'owner' });
        await post.replaceClaim('home', { ...invite, hash: 'second', role: 'owner' });
        expect(await post.invite('first', AT)).toBeUndefined();
        expect(await post.invite('second', AT)).toMatchObject({ role: 'owner' });
      });
    });
  });
}
