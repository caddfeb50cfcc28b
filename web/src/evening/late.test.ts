import { expect, test } from 'vitest';
import { aheadOf, clockOf, GRACE, isShort, lateBy, lateWords, secondOf } from './late';

const origin = '2026-12-05T19:30:00.000Z';
const line = { startSecond: 600, seconds: 240 };

test('a line that began in time is on time until it goes on too long', () => {
  expect(lateBy(line, 600, 600)).toBe(0);
  expect(lateBy(line, 600, 840)).toBe(0);
  expect(lateBy(line, 600, 900)).toBe(60);
});

test('a line that began late stays late, and one before its time ahead', () => {
  expect(lateBy(line, 720, 730)).toBe(120);
  expect(lateBy(line, 500, 510)).toBe(-100);
  expect(lateBy(line, 500, 840)).toBe(0);
});

test('late and ahead are said in minutes, and a little is nothing', () => {
  expect(lateWords(GRACE - 1)).toBe('On time');
  expect(lateWords(240)).toBe('Running 4 minutes late');
  expect(lateWords(-180)).toBe('3 minutes ahead');
});

test('the program’s clock counts, not the one of the device', () => {
  const device = Date.parse(origin) - 50_000;
  const ahead = aheadOf('2026-12-05T19:30:10.000Z', device);
  expect(secondOf(device, origin, ahead)).toBe(10);
});

test('time runs short when the last line would end after the end', () => {
  const lines = [line, { startSecond: 840, seconds: 240 }];
  expect(isShort(lines, 600, 700, 1080)).toBe(false);
  expect(isShort(lines, 600, 840 + 60, 1080)).toBe(false);
  expect(isShort(lines, 600, 840 + GRACE + 1, 1080)).toBe(true);
  expect(isShort(lines, 600 + GRACE + 1, 700, 1080)).toBe(true);
  expect(isShort([], 0, 5000, 1080)).toBe(false);
});

test('a moment is told by the clock of the place', () => {
  const at = new Date(Date.parse(origin) + 2_100_000);
  const told = `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
  expect(clockOf(2100, origin)).toBe(told);
});
