import { expect, test } from 'vitest';
import type { LessonStepItem } from '../lib/contract';
import { clock, GRACE, NOTHING, spoken, standing, ticked, type Progress } from './progress';

const steps = [
  step('name', 30, null),
  step('chunk-1', 90, null),
  step('join-1', 60, 3),
  step('slow-85', 120, 2),
  step('silent', 180, 1),
  step('practise', 30, 4),
];
const ALL = 510;
const AT = 1_000_000;

function step(id: string, seconds: number, leaveOut: number | null): LessonStepItem {
  return {
    id,
    kind: 'chunk',
    phase: '',
    words: id,
    details: [],
    start: 0,
    seconds,
    times: 1,
    leaveOut,
    fromCount: null,
    toCount: null,
    wall: 1,
    percent: 0,
    pace: null,
    help: null,
  };
}

function after(seconds: number, progress: Progress) {
  return standing(steps, ALL, progress, AT + seconds * 1000);
}

test('before it begins nothing runs', () => {
  const now = after(500, NOTHING);
  expect(now.current?.id).toBe('name');
  expect(now.leftOfAll).toBe(ALL);
  expect(now.late).toBe(0);
});

test('the first step that is not ticked has its turn from the last tick on', () => {
  let progress: Progress = { startedAt: AT, ticks: {} };
  expect(after(20, progress).leftOfStep).toBe(10);
  expect(after(45, progress).leftOfStep).toBe(-15);
  progress = ticked(progress, 'name', true, AT + 45_000);
  expect(after(50, progress).current?.id).toBe('chunk-1');
  expect(after(50, progress).inStep).toBe(5);
  expect(after(50, progress).leftOfAll).toBe(ALL - 50);
});

test('a little late is not worth a word', () => {
  const progress = ticked({ startedAt: AT, ticks: {} }, 'name', true, AT + 85_000);
  expect(after(85, progress).late).toBe(0);
  expect(after(85, progress).leaveOut).toEqual([]);
});

test('late, what the plan says goes first, and no more than is needed', () => {
  // two minutes over the first step
  let progress = ticked({ startedAt: AT, ticks: {} }, 'name', true, AT + 150_000);
  expect(after(150, progress).late).toBe(120);
  expect(after(150, progress).leaveOut.map((s) => s.id)).toEqual(['silent']);
  expect(after(150, progress).isEnough).toBe(true);

  progress = ticked({ startedAt: AT, ticks: {} }, 'name', true, AT + 30_000 + 300_000 + GRACE * 1000);
  expect(after(390, progress).leaveOut.map((s) => s.id)).toEqual(['silent', 'slow-85']);
  expect(after(390, progress).isEnough).toBe(true);
});

test('what is never left out is never named, and it is said when that is not enough', () => {
  const progress = ticked({ startedAt: AT, ticks: {} }, 'name', true, AT + 510_000);
  const now = after(510, progress);
  expect(now.leaveOut.map((s) => s.id)).toEqual(['silent', 'slow-85', 'join-1', 'practise']);
  expect(now.isEnough).toBe(false);
  expect(now.leftOfAll).toBe(0);
});

test('the step that is danced now is not left out', () => {
  let progress: Progress = { startedAt: AT, ticks: {} };
  for (const id of ['name', 'chunk-1', 'join-1', 'slow-85']) progress = ticked(progress, id, true, AT + 600_000);
  expect(after(600, progress).current?.id).toBe('silent');
  expect(after(600, progress).leaveOut.map((s) => s.id)).toEqual(['practise']);
});

test('a tick can be taken back, and steps may be done in any order', () => {
  let progress = ticked(NOTHING, 'chunk-1', true, AT);
  expect(progress.startedAt).toBe(AT);
  expect(after(10, progress).current?.id).toBe('name');
  progress = ticked(progress, 'chunk-1', false, AT + 5000);
  expect(progress.ticks).toEqual({});
  expect(progress.startedAt).toBe(AT);
});

test('when all is ticked the lesson is over', () => {
  let progress: Progress = { startedAt: AT, ticks: {} };
  for (const s of steps) progress = ticked(progress, s.id, true, AT + 900_000);
  const now = after(900, progress);
  expect(now.current).toBeNull();
  expect(now.late).toBe(0);
  expect(now.isEnough).toBe(true);
});

test('times as one reads and says them', () => {
  expect([65, 5, 0, -0.4, -61].map(clock)).toEqual(['1:05', '0:05', '0:00', '0:00', '−1:01']);
  expect([20, 61, 130].map(spoken)).toEqual(['half a minute', '1 minute', '2 minutes']);
});
