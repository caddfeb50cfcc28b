/** What is gone over again and again: walls, the sections in them, and the links of a chain. */
import type { FloorAnswer, FloorSection } from '../lib/contract';
import type { Section } from '../lib/player';

const NEAR = 1e-6;

/** A wall as danced, with what is danced before the next. */
export interface Wall {
  /** Its number, from 1. */
  number: number;
  from: number;
  to: number;
  /** Where it faces when it begins: `9:00`; null when not known. */
  facing: string | null;
  /** Its sections, tags and all, in danced order. */
  sections: readonly FloorSection[];
}

/** The walls in danced order. */
export function wallsOf(floor: FloorAnswer): Wall[] {
  const starts = floor.stretches.filter((s) => s.startsWall);
  return starts.map((start, i) => {
    const to = starts[i + 1]?.at ?? floor.length;
    return {
      number: start.wall,
      from: start.at,
      to,
      facing: start.facing,
      sections: floor.sections.filter((s) => s.at > start.at - NEAR && s.at < to - NEAR),
    };
  });
}

/** The wall danced at a count; the first before it. */
export function wallAt(walls: readonly Wall[], count: number): number {
  const at = walls.findLastIndex((w) => w.from <= count + NEAR);
  return Math.max(0, at);
}

/** What a section is called, with its heading where it has one. */
export function nameOf(section: Pick<FloorSection, 'name' | 'title'>): string {
  const name = section.name.charAt(0).toUpperCase() + section.name.slice(1);
  return section.title ? `${name}: ${section.title}` : name;
}

/** A piece that she may begin or end with: a line, or a whole section that has none. */
export interface Piece {
  at: number;
  counts: number;
  /** Its counts as printed, or the name of its section. */
  label: string;
  /** Its section, as a place among those it was asked of. */
  section: number;
}

/** The lines of some sections in danced order. */
export function linesOf(sections: readonly FloorSection[]): Piece[] {
  return sections.flatMap((s, section) =>
    s.lines.length > 0
      ? s.lines.map(({ at, counts, label }) => ({ at, counts, label, section }))
      : [{ at: s.at, counts: s.counts, label: nameOf(s), section }],
  );
}

/** From the beginning of one piece to the end of another. */
export function spanOf(pieces: readonly Pick<Piece, 'at' | 'counts'>[], first: number, last: number): Section | null {
  const [a, b] = [pieces[Math.min(first, last)], pieces[Math.max(first, last)]];
  return a && b ? { from: a.at, to: b.at + b.counts } : null;
}

/** Which way a chain grows: from the first section on, or from the last back. */
export type ChainWay = 'forward' | 'backward';

/** The links of a chain: one section, then two joined, then three, up to all of them. */
export function chainOf(sections: readonly FloorSection[], way: ChainWay): Section[] {
  const last = sections.length - 1;
  return sections.map((_, i) => (way === 'forward' ? spanOf(sections, 0, i)! : spanOf(sections, last - i, last)!));
}

/** Practice speeds in hundredths: the steps teachers use, and where the music begins to fall apart. */
export const SPEEDS = [60, 70, 75, 80, 85, 90, 95, 100, 105] as const;

/** Slower than so many hundredths a warning is due. */
export const SLOW = 75;

/** How much is called. */
export type HelpChoice = 'thinning' | 'every-step' | 'headings' | 'warnings' | 'silent';

/** The choices, as they are offered. */
export const HELPS: readonly { help: HelpChoice; name: string; about: string }[] = [
  { help: 'every-step', name: 'Every step', about: 'Every move by its name, in every wall' },
  { help: 'headings', name: 'Headings', about: 'What each section begins with, and the warnings' },
  { help: 'warnings', name: 'Warnings', about: 'Only tags, restarts, new walls and the last one' },
  { help: 'silent', name: 'Silent', about: 'Nothing is called' },
  { help: 'thinning', name: 'Thinning out', about: 'Every step first, then less from wall to wall' },
];

/** What is asked of the program for a choice: a word for each wall, the last goes on; null for thinning out. */
export function helpOf(choice: HelpChoice): string[] | null {
  return choice === 'thinning' ? null : [choice];
}
