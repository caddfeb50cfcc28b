/** Where the eights stand on the line along the bottom of the page. */
import type { TrackMusic } from '../lib/contract';
import { lastAt } from './beats';

/** An eight as it is drawn. */
export interface TideBox {
  index: number;
  x: number;
  width: number;
  /** How loud it is, 0 to 1. */
  loud: number;
  /** The letter of the section that begins with it, or empty. */
  letter: string;
  isOdd: boolean;
}

/** The eights over a width of pixels; time runs evenly. */
export function boxes(music: TrackMusic, width: number): TideBox[] {
  return music.eights.map((eight, index) => ({
    index,
    x: (eight.start / music.seconds) * width,
    width: ((eight.end - eight.start) / music.seconds) * width,
    loud: meanLoud(music, eight.start, eight.end),
    letter: eight.beginsSection ? (music.sections[eight.section]?.label ?? '') : '',
    isOdd: eight.isOdd,
  }));
}

/** The eight that sounds at a second; -1 before the first. */
export function eightAt(music: TrackMusic, seconds: number): number {
  return lastAt(
    music.eights.map((e) => e.start),
    seconds,
  );
}

function meanLoud(music: TrackMusic, from: number, to: number): number {
  const a = Math.max(0, Math.floor(from * music.loudnessPerSecond));
  const b = Math.min(music.loudness.length, Math.ceil(to * music.loudnessPerSecond));
  if (b <= a) return 0.5;
  let sum = 0;
  for (let i = a; i < b; i++) sum += music.loudness[i]!;
  return sum / (b - a) / 100;
}
