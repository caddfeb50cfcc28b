import { describe, expect, it } from 'vitest';
import type { FloorSection, FloorStretch } from '../lib/contract';
import lantern from '../floor/fixtures/tin-lantern.json';
import type { FloorAnswer } from '../lib/contract';
import { chainOf, helpOf, linesOf, nameOf, spanOf, SPEEDS, wallAt, wallsOf } from './pieces';

const section = (at: number, counts: number, wall: number, name: string): FloorSection => ({
  at,
  counts,
  wall,
  kind: 'wall',
  name,
  title: '',
  lines: [],
});

const stretch = (at: number, counts: number, wall: number, facing: string, startsWall: boolean): FloorStretch => ({
  at,
  counts,
  wall,
  kind: startsWall ? 'wall' : 'tag',
  name: '',
  facing,
  words: '',
  startsWall,
});

// two walls of sixteen; the second ends after twelve counts with a tag of four
const FLOOR = {
  ...(lantern as unknown as FloorAnswer),
  length: 32,
  stretches: [stretch(0, 16, 1, '12:00', true), stretch(16, 12, 2, '9:00', true), stretch(28, 4, 2, '3:00', false)],
  sections: [
    section(0, 8, 1, 'section 1'),
    section(8, 8, 1, 'section 2'),
    section(16, 8, 2, 'section 1'),
    section(24, 4, 2, 'section 2'),
    section(28, 4, 2, 'tag'),
  ],
} as FloorAnswer;

describe('walls', () => {
  it('hold their sections and what is danced before the next wall', () => {
    const walls = wallsOf(FLOOR);
    expect(walls.map((w) => [w.number, w.from, w.to, w.facing, w.sections.length])).toEqual([
      [1, 0, 16, '12:00', 2],
      [2, 16, 32, '9:00', 3],
    ]);
    expect([-1, 0, 15.9, 16, 31].map((c) => wallAt(walls, c))).toEqual([0, 0, 0, 1, 1]);
  });
});

describe('a chain', () => {
  const { sections } = wallsOf(FLOOR)[1]!;

  it('grows from the first section to the whole wall', () => {
    expect(chainOf(sections, 'forward')).toEqual([
      { from: 16, to: 24 },
      { from: 16, to: 28 },
      { from: 16, to: 32 },
    ]);
  });

  it('grows from the last section back', () => {
    expect(chainOf(sections, 'backward')).toEqual([
      { from: 28, to: 32 },
      { from: 24, to: 32 },
      { from: 16, to: 32 },
    ]);
  });

  it('goes over some sections whichever is named first, and over none that is not there', () => {
    expect(spanOf(sections, 1, 0)).toEqual({ from: 16, to: 28 });
    expect(spanOf(sections, 0, 7)).toBeNull();
  });
});

it('counts to go over are picked by lines; a section without any is a piece itself', () => {
  const line = (at: number, counts: number, label: string) => ({ at, counts, label, from: 0, to: 0, number: 1 });
  const sections = [
    { ...section(16, 8, 2, 'section 1'), lines: [line(16, 2, '1-2'), line(18, 6, '3-8')] },
    section(24, 4, 2, 'wait'),
  ];
  expect(linesOf(sections).map((l) => [l.at, l.counts, l.label, l.section])).toEqual([
    [16, 2, '1-2', 0],
    [18, 6, '3-8', 0],
    [24, 4, 'Wait', 1],
  ]);
  expect(spanOf(linesOf(sections), 1, 2)).toEqual({ from: 18, to: 28 });
});

it('names, speeds and help are those of the trade', () => {
  expect(nameOf({ name: 'section 1', title: 'box' })).toBe('Section 1: box');
  expect(nameOf({ name: 'tag', title: '' })).toBe('Tag');
  expect([...SPEEDS]).toEqual([60, 70, 75, 80, 85, 90, 95, 100, 105]);
  expect(helpOf('thinning')).toBeNull();
  expect(helpOf('warnings')).toEqual(['warnings']);
});
