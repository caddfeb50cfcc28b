import type { FloorAnswer, FloorStep, FloorStretch } from '../lib/contract';
import type { PlayedDance } from '../lib/player';

const NEAR = 1e-4;

/** The index of the last of rising places at or before a count; -1 before the first. */
export function lastAt(places: ArrayLike<number>, count: number): number {
  let low = -1;
  let high = places.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (places[middle]! <= count + NEAR) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** What is danced when. */
export class Steps {
  private readonly places: Float64Array;
  private readonly stretchPlaces: Float64Array;
  private readonly walls: { at: number; facing: string }[];
  private readonly wallPlaces: Float64Array;
  private readonly lineOf: Int32Array;

  /** Runs of printed counts that rise, as first and last step: mostly an eight each. */
  readonly lines: readonly { from: number; to: number }[];

  /** @param floor What the program answered. */
  constructor(readonly floor: FloorAnswer) {
    this.places = Float64Array.from(floor.steps, (s) => s.at);
    this.stretchPlaces = Float64Array.from(floor.stretches, (s) => s.at);
    this.walls = floor.stretches.flatMap((s) => (s.startsWall && s.facing ? [{ at: s.at, facing: s.facing }] : []));
    this.wallPlaces = Float64Array.from(this.walls, (w) => w.at);
    const lines: { from: number; to: number }[] = [];
    this.lineOf = new Int32Array(floor.steps.length);
    floor.steps.forEach((step, i) => {
      const before = floor.steps[i - 1];
      const begins =
        !before ||
        Number.parseInt(step.count, 10) < Number.parseInt(before.count, 10) ||
        lastAt(this.stretchPlaces, step.at) !== lastAt(this.stretchPlaces, before.at);
      if (begins) lines.push({ from: i, to: i });
      else lines.at(-1)!.to = i;
      this.lineOf[i] = lines.length - 1;
    });
    this.lines = lines;
  }

  /** The step danced at a count: the last that has landed; -1 before the first. */
  indexAt(count: number): number {
    return lastAt(this.places, count);
  }

  /** The step of an index. */
  step(index: number): FloorStep | null {
    return this.floor.steps[index] ?? null;
  }

  /** The line of counts that a step belongs to, in which what falls on one count is one. */
  countsOf(index: number): { count: string; isNow: boolean }[] {
    const line = this.lines[this.lineOf[index] ?? -1];
    if (!line) return [];
    const counts: { count: string; isNow: boolean }[] = [];
    const now = this.floor.steps[index]!.at;
    for (let i = line.from; i <= line.to; i++) {
      const step = this.floor.steps[i]!;
      if (i > line.from && step.at === this.floor.steps[i - 1]!.at) continue;
      counts.push({ count: step.count, isNow: step.at === now });
    }
    return counts;
  }

  /** What is danced with the step on its very count, in words. */
  wordsOf(index: number): string {
    const { steps } = this.floor;
    const at = steps[index]?.at;
    // a dance that has just become shorter: the index is put right in the next frame
    if (at === undefined) return '';
    let first = index;
    while (first > 0 && steps[first - 1]!.at === at) first--;
    const words: string[] = [];
    for (let i = first; i < steps.length && steps[i]!.at === at; i++) words.push(steps[i]!.words);
    return words.join(', ');
  }

  /** The first step after the count of this one. */
  after(index: number): number {
    const { steps } = this.floor;
    let next = index + 1;
    while (next < steps.length && index >= 0 && steps[next]!.at === steps[index]!.at) next++;
    if (next < steps.length) return next;
    return this.floor.goesRound ? 0 : -1;
  }

  /** The stretch danced at a count. */
  stretchAt(count: number): FloorStretch | null {
    return this.floor.stretches[lastAt(this.stretchPlaces, count)] ?? null;
  }

  /** The count at which the wall danced at a count began. */
  wallStart(count: number): number {
    const i = lastAt(this.wallPlaces, count);
    return i < 0 ? this.floor.first : this.wallPlaces[i]!;
  }

  /** The last count that feet have landed on: what a still picture shows. */
  landed(count: number): number {
    const i = this.indexAt(count);
    const at = i < 0 ? this.floor.first : this.places[i]!;
    return Math.max(at, Math.floor(count + NEAR));
  }
}

/**
 * What the playhead needs to know of a dance.
 * @param floor What the program answered.
 * @param eight Counts after which the ones come again: 8, or 6 in three-four.
 */
export function playedOf(floor: FloorAnswer, eight: number): PlayedDance {
  const stops = [...new Set(floor.steps.map((s) => s.at))];
  const ones: number[] = [];
  for (const line of new Steps(floor).lines) {
    // the printed count tells how far the one is behind, wherever a wall goes on after a tag
    const first = floor.steps.slice(line.from, line.to + 1).find((s) => /^\d+$/.test(s.count));
    const one = first ? first.at - (Number(first.count) - 1) : NaN;
    if (one > (ones.at(-1) ?? -Infinity)) ones.push(one);
  }
  return { first: floor.first, length: floor.length, goesRound: floor.goesRound, stops, eight, ones };
}

/** A printed count in its number and what is written smaller after it: `3&` in `3` and `&`. */
export function partsOf(count: string): { number: string; rest: string } {
  const number = /^\d*/.exec(count)?.[0] ?? '';
  return { number, rest: count.slice(number.length) };
}

/** A printed count as it is said. */
export function spoken(count: string): string {
  const { number, rest } = partsOf(count);
  return [number, ...[...rest].map((sign) => (sign === '&' ? 'and' : sign))].filter(Boolean).join(' ');
}
