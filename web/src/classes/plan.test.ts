import { expect, test } from 'vitest';
import type { SessionLine } from '../lib/contract';
import { inOrder, minutesOf, minutesWords, withLine } from './plan';

const line = (role: string, danceId: string | null, minutes: number | null): SessionLine => ({
  role,
  danceId,
  title: danceId ?? 'a visitor’s',
  minutes,
  note: '',
  knowing: null,
});

test('lines stand in the order of a class, each role as she gave it', () => {
  const lines = [line('danced', 'd', 4), line('taught', 'b', 20), line('warm-up', 'a', 4), line('taught', 'c', 15)];
  expect(inOrder(lines).map((l) => l.danceId)).toEqual(['a', 'b', 'c', 'd']);
});

test('minutes add up against the length of the class', () => {
  const lines = [line('warm-up', 'a', 5), line('taught', 'b', 25)];
  expect(minutesOf(lines)).toBe(30);
  expect(minutesWords(lines, 60)).toBe('30 of 60 minutes; 30 are free.');
  expect(minutesWords(lines, 31)).toBe('30 of 31 minutes; 1 is free.');
  expect(minutesWords(lines, 30)).toBe('30 of 30 minutes: it comes out even.');
  expect(minutesWords(lines, 20)).toBe('30 minutes for 20: 10 too many.');
});

test('dances without minutes are told apart', () => {
  expect(minutesWords([line('danced', 'a', null)], 60)).toBe(
    '0 of 60 minutes; 60 are free. One dance has no minutes yet.',
  );
});

test('a dance stands once in a role, and may stand in two', () => {
  const lines = withLine([line('revised', 'a', 4)], line('revised', 'a', 9));
  expect(lines).toEqual([line('revised', 'a', 4)]);
  expect(withLine(lines, line('warm-up', 'a', 4)).map((l) => l.role)).toEqual(['warm-up', 'revised']);
  const visitors = withLine([line('danced', null, 4)], line('danced', null, 5));
  expect(visitors).toHaveLength(2);
});
