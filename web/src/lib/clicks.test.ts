import { describe, expect, it } from 'vitest';
import { HIGH_HERTZ, LOW_HERTZ, woodSamples } from './clicks';

const RATE = 44100;

/** How much of a frequency is in a sound. */
function strength(samples: Float32Array, hertz: number): number {
  let re = 0;
  let im = 0;
  for (let i = 0; i < samples.length; i++) {
    re += samples[i]! * Math.cos((2 * Math.PI * hertz * i) / RATE);
    im += samples[i]! * Math.sin((2 * Math.PI * hertz * i) / RATE);
  }
  return Math.hypot(re, im);
}

describe('the sound of wood', () => {
  it('is loud at once, gone soon and never beyond the scale', () => {
    const samples = woodSamples(RATE, HIGH_HERTZ);
    const loudest = (from: number, to: number) =>
      samples.slice(from * RATE, to * RATE).reduce((most, s) => Math.max(most, Math.abs(s)), 0);
    expect(loudest(0, 0.003)).toBeCloseTo(0.85, 6);
    expect(loudest(0, 1)).toBeLessThanOrEqual(0.8500001);
    expect(loudest(0.1, 1)).toBeLessThan(0.02);
    expect(Math.abs(samples.at(-1)!)).toBeLessThan(1e-4);
  });

  it('is lower for the one', () => {
    const one = woodSamples(RATE, LOW_HERTZ);
    const other = woodSamples(RATE, HIGH_HERTZ);
    expect(strength(one, LOW_HERTZ)).toBeGreaterThan(3 * strength(one, HIGH_HERTZ));
    expect(strength(other, HIGH_HERTZ)).toBeGreaterThan(3 * strength(other, LOW_HERTZ));
  });

  it('is the same every time', () => {
    expect(woodSamples(RATE, LOW_HERTZ)).toEqual(woodSamples(RATE, LOW_HERTZ));
  });
});
