import { describe, expect, it } from 'vitest';
import type { FitChartRows } from '../lib/contract';
import { sample } from '../track/sample';
import { countAt, gapsOf, notches, PAGE, pageOf, piecesOf, placeOf, rowOf, step } from './rows';

const chart: FitChartRows = {
  eight: 8,
  ending: null,
  rows: [
    { from: 0, counts: 16, seconds: 0.5, section: 0, beginsSection: true },
    { from: 16, counts: 32, seconds: 8.5, section: 1, beginsSection: true },
    { from: 48, counts: 4, seconds: 24.5, section: 1, beginsSection: false },
    { from: 52, counts: 8, seconds: 26.5, section: 2, beginsSection: true },
  ],
  spans: [
    { kind: 'intro', from: 0, to: 16, wall: 0, part: '', name: '', facing: null, starts: false, isCut: false },
    { kind: 'wall', from: 16, to: 50, wall: 1, part: '', name: '', facing: '12:00', starts: true, isCut: false },
    { kind: 'wall', from: 50, to: 60, wall: 2, part: '', name: '', facing: '9:00', starts: true, isCut: true },
  ],
};

// 20 pixels a count: a row of four eights fills the width
const page = pageOf(chart, PAGE.margin + 8 + 32 * 20);

describe('the plan laid over the track', () => {
  it('begins a new row with every section, a little apart', () => {
    expect(page.perCount).toBe(20);
    expect(page.rows.map((r) => r.y)).toEqual([
      0,
      PAGE.row + PAGE.sectionGap,
      2 * PAGE.row + PAGE.sectionGap,
      3 * PAGE.row + 2 * PAGE.sectionGap,
    ]);
  });

  it('finds the row and the place of a count', () => {
    expect([0, 15, 16, 49, 52, 59].map((c) => rowOf(page, c))).toEqual([0, 0, 1, 2, 3, 3]);
    expect(placeOf(page, 20)).toEqual({ x: PAGE.margin + 80, y: page.rows[1]!.y, row: 1 });
  });

  it('finds the count of a place again, on the grid asked for and never beyond the row', () => {
    for (const count of [0, 4, 16, 28, 48, 56]) {
      const { x, y } = placeOf(page, count);
      expect(countAt(page, x + 7, y + 10, 1)).toBe(count);
    }
    expect(countAt(page, PAGE.margin + 20 * 13, page.rows[1]!.y, 4)).toBe(28);
    expect(countAt(page, 9999, page.rows[2]!.y + 5, 4)).toBe(52);
    expect(countAt(page, -50, -50, 4)).toBe(0);
  });

  it('cuts bands into rows and knows where each begins and ends', () => {
    const pieces = piecesOf(page, chart.spans);
    expect(pieces.map((p) => [p.row, p.from, p.to, p.isFirst, p.isLast])).toEqual([
      [0, 0, 16, true, true],
      [1, 16, 48, true, false],
      [2, 48, 50, false, true],
      [2, 50, 52, true, false],
      [3, 52, 60, false, true],
    ]);
  });

  it('moves by eights that begin anew with each row, or by counts', () => {
    expect(step(page, 8, 16, 1, false)).toBe(24);
    expect(step(page, 8, 48, 1, false)).toBe(52);
    expect(step(page, 8, 52, -1, false)).toBe(48);
    expect(step(page, 8, 0, -1, false)).toBe(0);
    expect(step(page, 8, 59, 1, true)).toBe(59);
  });

  it('gives every wall its notches', () => {
    expect(['12:00', '3:00', '6:00', '9:00', null].map(notches)).toEqual([0, 1, 2, 3, 0]);
  });

  it('puts the stops of the music on the counts they cover', () => {
    const music = sample();
    const seconds = [...music.beats, 30.5];
    expect(gapsOf(music, seconds)).toEqual([{ from: 48, to: 52, isStop: true, words: 'stop' }]);
  });
});
