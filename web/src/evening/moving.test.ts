import { expect, test } from 'vitest';
import type { ProgrammeLine, ProgrammeStretchItem } from '../lib/contract';
import { beside } from './moving';

const stretch = (index: number, kind: string, places: number[]): ProgrammeStretchItem => ({
  index,
  kind,
  name: kind,
  when: '',
  lines: places.map((place) => ({ place }) as ProgrammeLine),
});
const programme = {
  stretches: [stretch(0, 'dancing', [0, 1]), stretch(1, 'rest', [0]), stretch(2, 'dancing', [0, 1])],
};

test('a line moves within its stretch', () => {
  expect(beside(programme, { stretch: 0, place: 0 }, 1)).toEqual({ stretch: 0, place: 1 });
  expect(beside(programme, { stretch: 2, place: 1 }, -1)).toEqual({ stretch: 2, place: 0 });
});

test('it goes over a rest into the next stretch', () => {
  expect(beside(programme, { stretch: 0, place: 1 }, 1)).toEqual({ stretch: 2, place: 0 });
  expect(beside(programme, { stretch: 2, place: 0 }, -1)).toEqual({ stretch: 0, place: 1 });
});

test('at the ends there is nowhere to go', () => {
  expect(beside(programme, { stretch: 0, place: 0 }, -1)).toBeNull();
  expect(beside(programme, { stretch: 2, place: 1 }, 1)).toBeNull();
});

test('in the night the first lines are gone and places begin later', () => {
  const rest = { stretches: [stretch(2, 'dancing', [3, 4])] };
  expect(beside(rest, { stretch: 2, place: 3 }, 1)).toEqual({ stretch: 2, place: 4 });
  expect(beside(rest, { stretch: 2, place: 3 }, -1)).toBeNull();
});
