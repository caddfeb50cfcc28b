import { beforeEach, expect, test } from 'vitest';
import { findAsked, keepAsked, USUAL } from './asked';
import { NOTHING } from './progress';
import { dayOf, findProgress, keepProgress } from './ticks';

const NOON = new Date(2026, 10, 28, 12).getTime();
const DAY = 24 * 60 * 60 * 1000;

beforeEach(() => localStorage.clear());

test('ticks are kept per dance and day', () => {
  const done = { startedAt: NOON, ticks: { 'chunk-1': NOON + 1000 } };
  expect(keepProgress('a', done, NOON)).toBe(true);
  expect(findProgress('a', NOON + 60_000)).toEqual(done);
  expect(findProgress('b', NOON)).toEqual(NOTHING);
  expect(findProgress('a', NOON + DAY)).toEqual(NOTHING);
});

test('days are those of the place she is in', () => {
  expect(dayOf(new Date(2026, 0, 2, 0, 5).getTime())).toBe('2026-01-02');
  expect(dayOf(new Date(2026, 0, 2, 23, 55).getTime())).toBe('2026-01-02');
});

test('after two weeks they are let go, and nothing else is', () => {
  localStorage.setItem('scuff.draft.x', 'hers');
  keepProgress('a', NOTHING, NOON);
  keepProgress('a', NOTHING, NOON + 20 * DAY);
  expect(Object.keys(localStorage).sort()).toEqual(['scuff.draft.x', `scuff.lesson.${dayOf(NOON + 20 * DAY)}.a`]);
});

test('what another hand has put there is no progress', () => {
  const at = `scuff.lesson.${dayOf(NOON)}.`;
  localStorage.setItem(`${at}a`, 'not json');
  localStorage.setItem(`${at}b`, '{"ticks":5}');
  localStorage.setItem(`${at}c`, '{"startedAt":"soon","ticks":{"name":"yes","listen":7}}');
  expect(findProgress('a', NOON)).toEqual(NOTHING);
  expect(findProgress('b', NOON)).toEqual(NOTHING);
  expect(findProgress('c', NOON)).toEqual({ startedAt: null, ticks: { listen: 7 } });
});

test('a browser that keeps nothing says so', () => {
  const full = {
    length: 0,
    setItem() {
      throw new DOMException('full', 'QuotaExceededError');
    },
  } as unknown as Storage;
  expect(keepProgress('a', NOTHING, NOON, full)).toBe(false);
});

test('what she asked last is asked again, and nonsense is not', () => {
  expect(findAsked()).toEqual(USUAL);
  keepAsked({ ...USUAL, minutes: 45, class: 'beginner', knows: ['a'], knees: true, warmUp: false });
  expect(findAsked()).toEqual({ ...USUAL, minutes: 45, class: 'beginner', knows: ['a'], knees: true, warmUp: false });
  localStorage.setItem('scuff.lesson-asked', '{"minutes":9999,"class":"expert","knows":[1,"b"]}');
  expect(findAsked()).toEqual({ ...USUAL, knows: ['b'] });
});
