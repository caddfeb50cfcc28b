/** Where things stand on the strip of a track that runs from left to right. */
import type { TrackMusic } from '../lib/contract';
import { lastAt, nearest } from './beats';

/** Seconds against pixels. */
export class Strip {
  /**
   * @param seconds Length of the track.
   * @param perSecond Pixels a second.
   */
  constructor(
    readonly seconds: number,
    readonly perSecond: number,
  ) {}

  /** Its width in pixels. */
  get width(): number {
    return Math.ceil(this.seconds * this.perSecond);
  }

  /** Where a second is. */
  xOf(seconds: number): number {
    return seconds * this.perSecond;
  }

  /** What second is there. */
  secondsOf(x: number): number {
    return Math.min(this.seconds, Math.max(0, x / this.perSecond));
  }

  /** Where to scroll so that a second is seen with some of what comes before; null when it is seen well enough already. */
  scrollTo(seconds: number, from: number, view: number): number | null {
    const x = this.xOf(seconds);
    if (x >= from + view * 0.1 && x <= from + view * 0.8) return null;
    return Math.min(Math.max(0, x - view * 0.25), Math.max(0, this.width - view));
  }
}

/** Pixels a second at which so many beats fill a view; wide enough for their numbers to be read. */
export function scaleFor(music: Pick<TrackMusic, 'beats' | 'seconds'>, view: number, beats: number): number {
  const all = music.beats.length;
  const perBeat = all > 1 ? (music.beats[all - 1]! - music.beats[0]!) / (all - 1) : 0.5;
  return Math.max(view / Math.max(1, music.seconds), view / Math.max(1, beats) / Math.max(0.1, perBeat));
}

/** The beats that are seen, as first and one past the last. */
export function seen(beats: readonly number[], from: number, to: number): [number, number] {
  return [Math.max(0, lastAt(beats, from)), lastAt(beats, to) + 1];
}

/**
 * The loudness over each pixel column, 0 to 1: the loudest moment of it, so that no hit is lost.
 * @param loudness 0 to 100.
 * @param perSecond Values of it a second.
 */
export function columns(
  loudness: readonly number[],
  perSecond: number,
  from: number,
  to: number,
  many: number,
): Float32Array {
  const tops = new Float32Array(many);
  for (let i = 0; i < many; i++) {
    const a = (from + ((to - from) * i) / many) * perSecond;
    const b = (from + ((to - from) * (i + 1)) / many) * perSecond;
    let top = 0;
    for (
      let k = Math.max(0, Math.floor(a));
      k < Math.max(Math.floor(a) + 1, Math.ceil(b)) && k < loudness.length;
      k++
    ) {
      top = Math.max(top, loudness[k]!);
    }
    tops[i] = top / 100;
  }
  return tops;
}

/** The beat on which a boundary lands when it is let go at a second: the nearest count 1, unless she asks for any beat. */
export function landing(music: Pick<TrackMusic, 'beats' | 'counts'>, seconds: number, anyBeat: boolean): number {
  if (anyBeat) return nearest(music.beats, seconds);
  let best = -1;
  for (let i = 0; i < music.beats.length; i++) {
    if (music.counts[i] !== 1) continue;
    if (best < 0 || Math.abs(music.beats[i]! - seconds) < Math.abs(music.beats[best]! - seconds)) best = i;
  }
  return best >= 0 ? best : nearest(music.beats, seconds);
}

/** The next place of a boundary when it is moved by a key: an eight on or back, or a beat. */
export function moved(music: Pick<TrackMusic, 'beats' | 'eights'>, beat: number, way: 1 | -1, byBeat: boolean): number {
  if (byBeat) return Math.min(music.beats.length - 1, Math.max(0, beat + way));
  const starts = music.eights.map((e) => e.beat);
  const at = lastAt(starts, beat);
  const to = way > 0 ? at + 1 : starts[at]! < beat ? at : at - 1;
  return starts[Math.min(starts.length - 1, Math.max(0, to))] ?? beat;
}
