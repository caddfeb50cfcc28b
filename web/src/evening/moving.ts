/** Where a line goes when it is moved in a programme. Knows no dance; only stretches and places. */
import type { ProgrammeAnswer } from '../lib/contract';

/** A place in the programme. */
export interface Spot {
  stretch: number;
  place: number;
}

/** Whether dances can be put into a stretch. */
function isDanced(kind: string): boolean {
  return kind !== 'lesson' && kind !== 'rest';
}

/** The place one earlier (-1) or later (+1), over lessons and rests into the next stretch of dances; null at the ends. */
export function beside(programme: Pick<ProgrammeAnswer, 'stretches'>, from: Spot, by: -1 | 1): Spot | null {
  const stretches = programme.stretches.filter((s) => isDanced(s.kind) && s.lines.length > 0);
  const at = stretches.findIndex((s) => s.index === from.stretch);
  const here = stretches[at];
  if (!here) return null;
  const place = here.lines.findIndex((l) => l.place === from.place) + by;
  const line = here.lines[place];
  if (line) return { stretch: here.index, place: line.place };
  const next = stretches[at + by];
  const last = next && (by < 0 ? next.lines[next.lines.length - 1] : next.lines[0]);
  return next && last ? { stretch: next.index, place: last.place } : null;
}
