/** Looking things up in the music of a track. What the beats mean, the program has said; here they are only found again. */
import type { TrackEight, TrackMusic } from '../lib/contract';

/** The index of the last of rising numbers at or below a value; -1 before the first. */
export function lastAt(rising: ArrayLike<number>, value: number): number {
  let low = -1;
  let high = rising.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (rising[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The index of the nearest of rising numbers; -1 where there are none. */
export function nearest(rising: ArrayLike<number>, value: number): number {
  const before = lastAt(rising, value);
  if (before < 0) return rising.length > 0 ? 0 : -1;
  const after = before + 1;
  return after < rising.length && rising[after]! - value < value - rising[before]! ? after : before;
}

/** The eight that a beat lies in; -1 where there are none. */
export function eightOf(eights: readonly TrackEight[], beat: number): number {
  let low = eights.length > 0 ? 0 : -1;
  let high = eights.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (eights[middle]!.beat <= beat) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Minutes, seconds and tenths, as the program writes places: `1:02.3`. */
export function clock(seconds: number): string {
  const tenths = Math.max(0, Math.round(seconds * 10));
  const minutes = Math.floor(tenths / 600);
  return `${minutes}:${String(Math.floor(tenths / 10) % 60).padStart(2, '0')}.${tenths % 10}`;
}

/** Where a beat is, for somebody who listens: section, eight, count and time. */
export function placeOf(music: TrackMusic, beat: number): string {
  const seconds = music.beats[beat];
  if (seconds === undefined) return 'before the music';
  const eight = music.eights[eightOf(music.eights, beat)];
  const section = eight && eight.section >= 0 ? music.sections[eight.section] : undefined;
  const inSection =
    eight && section ? music.eights.filter((e) => e.section === eight.section && e.beat <= beat).length : 0;
  const count = music.counts[beat] ? `count ${music.counts[beat]}` : `beat ${beat + 1}`;
  const name = section ? `section ${section.name || section.label}, eight ${inSection}, ` : '';
  return `${name}${count}, ${clock(seconds)}`;
}

/** For the player: beats counted from the start of the dance, with their seconds; empty where there are fewer than two. */
export function tableOf(music: TrackMusic): [number, number][] {
  const start = Math.max(0, music.startBeat);
  const table: [number, number][] = [];
  music.beats.forEach((seconds, i) => {
    const before = table.at(-1);
    if (!before || seconds > before[1]) table.push([i - start, seconds]);
    const next = music.beats[i + 1];
    if (music.and > 0.5 && next !== undefined && next > seconds)
      table.push([i - start + 0.5, seconds + music.and * (next - seconds)]);
  });
  return table.length < 2 ? [] : table;
}
