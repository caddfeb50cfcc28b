import { describe, expect, it } from 'vitest';
import type { TrackMusic } from '../lib/contract';
import { clock, eightOf, lastAt, nearest, placeOf, tableOf } from './beats';
import { sample } from './sample';

describe('finding things again in the music', () => {
  it('finds the last beat at or before a second, and none before the first', () => {
    expect(lastAt([1, 2, 3], 0.5)).toBe(-1);
    expect(lastAt([1, 2, 3], 2)).toBe(1);
    expect(lastAt([1, 2, 3], 99)).toBe(2);
    expect(lastAt([], 1)).toBe(-1);
  });

  it('finds the nearest beat', () => {
    expect(nearest([1, 2, 4], 2.9)).toBe(1);
    expect(nearest([1, 2, 4], 3.1)).toBe(2);
    expect(nearest([1, 2, 4], -5)).toBe(0);
    expect(nearest([], 1)).toBe(-1);
  });

  it('writes places as the program does', () => {
    expect(clock(62.34)).toBe('1:02.3');
    expect(clock(59.97)).toBe('1:00.0');
    expect(clock(-1)).toBe('0:00.0');
  });

  it('says where a beat is in words for somebody who listens', () => {
    const music = sample();
    expect(placeOf(music, 20)).toBe('section verse, eight 1, count 5, 0:10.5');
    expect(placeOf(music, 30)).toBe('section verse, eight 2, count 7, 0:15.5');
    expect(eightOf(music.eights, 30)).toBe(3);
  });

  it('counts from the start of the dance, and puts the ands where a swung beat has them', () => {
    const swung: TrackMusic = { ...sample(), and: 2 / 3 };
    const table = tableOf(swung);
    expect(table[0]).toEqual([-16, 0.5]);
    expect(table[1]![0]).toBe(-15.5);
    expect(table[1]![1]).toBeCloseTo(0.5 + 1 / 3, 9);
    expect(table.every(([c, s], i) => i === 0 || (c > table[i - 1]![0] && s > table[i - 1]![1]))).toBe(true);
    expect(tableOf({ ...swung, beats: [1] })).toEqual([]);
  });
});
