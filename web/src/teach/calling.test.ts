import { describe, expect, it } from 'vitest';
import type { CalledWords } from '../lib/contract';
import { CallBook } from './calling';

const call = (words: string, at: number, due: number, kind = 'move'): CalledWords => ({
  kind,
  words,
  at,
  until: due,
  for: due,
  wall: 1,
  seconds: at / 2,
  due: due / 2,
  from: 0,
  to: 0,
});

const BOOK = new CallBook([
  call('five', -4, -4, 'count-in'),
  call('box right', -2, 0),
  call('shuffle', 1, 2),
  call('box left', 2.5, 4),
  call('tag coming', 4, 12, 'tag'),
  call('rock back', 6, 8),
]);

describe('calls', () => {
  it('are seen before they are due, and the count-in is no call', () => {
    const before = BOOK.about(-4, null);
    expect([before.now, before.next?.words, before.inCounts, before.isSaid]).toEqual([null, 'box right', 4, false]);
    const said = BOOK.about(-1.5, null);
    expect([said.next?.words, said.isSaid]).toEqual(['box right', true]);
    const danced = BOOK.about(0.5, null);
    expect([danced.now?.words, danced.next?.words, danced.inCounts, danced.isSaid]).toEqual([
      'box right',
      'shuffle',
      1.5,
      false,
    ]);
  });

  it('are none where nothing is called', () => {
    const empty = new CallBook([]);
    expect(empty.about(3, { from: 0, to: 8 })).toEqual({ now: null, next: null, inCounts: Infinity, isSaid: false });
    expect(empty.about(3, null).next).toBeNull();
  });

  it('come in the order of what they name', () => {
    expect(BOOK.about(5, null).next?.words).toBe('rock back');
    expect(BOOK.about(9, null).next?.words).toBe('tag coming');
    const after = BOOK.about(13, null);
    expect([after.now?.words, after.next]).toEqual(['tag coming', null]);
  });

  it('go round with a section, said as long before as ever', () => {
    const round = { from: 0, to: 8 };
    const last = BOOK.about(5, round);
    expect([last.now?.words, last.next?.words, last.inCounts, last.isSaid]).toEqual([
      'box left',
      'box right',
      3,
      false,
    ]);
    expect(BOOK.about(6.5, round).isSaid).toBe(true);
  });

  it('warn of what breaks the pattern some counts before, inside a section only of what it holds', () => {
    expect(BOOK.warning(0, null, 16)?.inCounts).toBe(12);
    expect(BOOK.warning(0, null, 8)).toBeNull();
    expect(BOOK.warning(0, { from: 0, to: 8 }, 16)).toBeNull();
    expect(BOOK.warning(12, null, 16)).toBeNull();
  });

  it('are said in the order in which their words begin', () => {
    const said = { now: new Set<CalledWords>(), next: new Set<CalledWords>() };
    const order: string[] = [];
    for (let i = 0; i < 5; i++) {
      const next = BOOK.toSay(-3, null, true, said)!;
      order.push(next.call.words);
      said.now.add(next.call);
    }
    expect(order).toEqual(['box right', 'shuffle', 'box left', 'tag coming', 'rock back']);
    expect(BOOK.toSay(-3, null, true, said)).toBeNull();
    expect(BOOK.toSay(5, null, true, { now: new Set(), next: new Set() })).toMatchObject({
      call: { words: 'tag coming' },
      inCounts: 7,
      wished: -1,
    });
  });

  it('of the next round are said at the end of this one, unless it is counted in', () => {
    const round = { from: 0, to: 8 };
    const said = { now: new Set<CalledWords>(), next: new Set<CalledWords>() };
    expect(BOOK.toSay(5, round, true, said)).toMatchObject({
      call: { words: 'box right' },
      isAhead: true,
      inCounts: 3,
      wished: 1,
    });
    expect(BOOK.toSay(5, round, false, said)).toBeNull();
  });

  it('for the same count follow each other as their words begin', () => {
    const book = new CallBook([call('tag coming', 4, 12, 'tag'), call('tag', 10, 12, 'tag')]);
    expect(book.about(5, null).next?.words).toBe('tag coming');
    expect(book.about(10.5, null).next?.words).toBe('tag');
  });
});
