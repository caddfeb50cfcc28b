/** Which call is said now and which comes next, also where a section is danced again and again. */
import type { CalledWords } from '../lib/contract';
import type { Section } from '../lib/player';

const NEAR = 1e-6;

/** What is called about a moment. */
export interface Calling {
  /** The call that names what is danced now; null before the first. */
  now: CalledWords | null;
  /** The call that comes next; null when none does. */
  next: CalledWords | null;
  /** Counts until begins what it names. */
  inCounts: number;
  /** Whether its words are being said. */
  isSaid: boolean;
}

/** Calls that were said, of the round that is danced and of the one after it. */
export interface Said {
  now: Set<CalledWords>;
  next: Set<CalledWords>;
}

/** A call that is to be said. */
export interface ToSay {
  call: CalledWords;
  /** Whether it is of the next round. */
  isAhead: boolean;
  /** Counts until begins what it names. */
  inCounts: number;
  /** Counts until its words should begin; below zero when they should have. */
  wished: number;
}

/** Of calls for the same count the last whose words have begun; the first before any has. */
function latest(calls: readonly CalledWords[], first: number, place: number): number {
  let at = first;
  for (;;) {
    const after = calls[at + 1];
    if (at < 0 || !after || after.for !== calls[first]?.for || after.at > place + NEAR) return at;
    at++;
  }
}

/** Calls that break the pattern: they are seen before they are said. */
const WARNINGS = new Set(['tag', 'restart', 'last-one', 'ending', 'wait']);

/** Whether a call warns of something that breaks the pattern. */
export function isWarning(call: Pick<CalledWords, 'kind'>): boolean {
  return WARNINGS.has(call.kind);
}

/** The calls of a dance, in the order in which begins what they name. */
export class CallBook {
  private readonly calls: readonly CalledWords[];

  /** @param calls What the program answered; the numbers of its count-in are left to the playhead, which counts in itself. */
  constructor(calls: readonly CalledWords[]) {
    this.calls = calls.filter((c) => c.kind !== 'count-in').sort((a, b) => a.for - b.for || a.at - b.at);
  }

  /**
   * What is called about a place.
   * @param place The danced count; below the beginning while it is counted in.
   * @param round What is danced again and again; null where nothing is.
   */
  about(place: number, round: Section | null): Calling {
    const { calls } = this;
    const inside = round ? calls.filter((c) => c.for >= round.from - NEAR && c.for < round.to - NEAR) : calls;
    const at = latest(
      inside,
      inside.findIndex((c) => c.for > place + NEAR),
      place,
    );
    const now = inside[at < 0 ? inside.length - 1 : at - 1] ?? null;
    const next =
      at >= 0 ? inside[at]! : round ? (inside[latest(inside, 0, place - round.to + round.from)] ?? null) : null;
    const inCounts = !next ? Infinity : at >= 0 ? next.for - place : round!.to - place + (next.for - round!.from);
    // the words of the next round's first call lie before the section: they are said as long before as ever
    const isSaid = next !== null && inCounts <= next.for - next.at + NEAR;
    return { now: now && now.for <= place + NEAR ? now : null, next, inCounts, isSaid };
  }

  /**
   * What is to be said next, in the order in which the words begin: a warning comes long before what it names.
   * @param place The danced count.
   * @param round What is danced again and again; null where nothing is.
   * @param goesOn Whether the next round follows without a count-in, so that its first calls are said in this one.
   * @param said Those that were said in this round, and those of the next.
   */
  toSay(place: number, round: Section | null, goesOn: boolean, said: Said): ToSay | null {
    let best: ToSay | null = null;
    const length = round ? round.to - round.from : 0;
    for (const isAhead of round && goesOn ? [false, true] : [false]) {
      const shift = isAhead ? length : 0;
      for (const call of this.calls) {
        if (round && !(call.for >= round.from - NEAR && call.for < round.to - NEAR)) continue;
        if (call.for + shift <= place + NEAR || (isAhead ? said.next : said.now).has(call)) continue;
        const wished = call.at + shift - place;
        if (!best || wished < best.wished) best = { call, isAhead, inCounts: call.for + shift - place, wished };
      }
    }
    return best;
  }

  /** The next that breaks the pattern, with the counts until it does; null when none comes within so many counts. */
  warning(place: number, round: Section | null, within: number): { call: CalledWords; inCounts: number } | null {
    const call = this.calls.find(
      (c) => isWarning(c) && c.for > place + NEAR && c.for - place <= within && (!round || c.for < round.to - NEAR),
    );
    return call ? { call, inCounts: call.for - place } : null;
  }
}
