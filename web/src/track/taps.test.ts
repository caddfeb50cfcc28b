import { describe, expect, it } from 'vitest';
import { mixed } from './decode';
import { whole } from './shelf.svelte';
import { Taps } from './taps';

describe('tapping along', () => {
  const row = (...seconds: number[]) => seconds.reduce((taps, s) => taps.and(s), new Taps());

  it('takes the pace from the middle of the gaps, so that one late tap does no harm', () => {
    expect(row(1, 1.5, 2, 2.9, 3, 3.5).perMinute).toBeCloseTo(120, 6);
  });

  it('begins anew after a rest, and after a jump back in the track', () => {
    expect(row(1, 1.5, 9).seconds).toEqual([9]);
    expect(row(1, 1.5, 0.5).seconds).toEqual([0.5]);
  });

  it('says nothing by too few taps', () => {
    expect(row(1, 1.5, 2).isEnough).toBe(false);
    expect(row(1, 1.5, 2, 2.5).isEnough).toBe(true);
    expect(row(1).perMinute).toBe(0);
  });
});

describe('what is handed to the program', () => {
  it('is the mean of the channels', () => {
    expect([...mixed([Float32Array.of(1, 0), Float32Array.of(0, -0.5)])]).toEqual([0.5, -0.25]);
    expect(mixed([]).length).toBe(0);
  });

  it('names every field of what is said', () => {
    expect(whole({ kind: 'swing', ratio: 2 })).toEqual({
      kind: 'swing',
      ratio: 2,
      seconds: null,
      from: null,
      to: null,
      is: null,
      beatsLater: null,
      at: null,
      label: null,
      name: null,
    });
  });
});
