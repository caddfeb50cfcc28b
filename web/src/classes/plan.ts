/** The lines of a session while she plans it or says what was held. Knows no dance; only roles, lines and minutes. */
import type { SessionLine } from '../lib/contract';

/** What a dance is there for, in the order of a class; with the words before and after it was held. */
export const ROLES = [
  { role: 'warm-up', plan: 'Warm up with', held: 'Warmed up with' },
  { role: 'revised', plan: 'Revise', held: 'Revised' },
  { role: 'taught', plan: 'Teach', held: 'Taught' },
  { role: 'requested', plan: 'Requests', held: 'Requests' },
  { role: 'danced', plan: 'Dance', held: 'Danced' },
  { role: 'cool-down', plan: 'Calm down with', held: 'Calmed down with' },
] as const;

/** How well a dance is known, from the least. */
export const KNOWINGS = [
  { knowing: 1, words: 'follows' },
  { knowing: 2, words: 'knows the start' },
  { knowing: 3, words: 'knows it with cues' },
  { knowing: 4, words: 'knows it alone' },
] as const;

/** The lines in the order of a class: by role, each role in the order she gave. */
export function inOrder(lines: readonly SessionLine[]): SessionLine[] {
  return ROLES.flatMap(({ role }) => lines.filter((l) => l.role === role));
}

/** How many minutes the lines have, those without a number left out. */
export function minutesOf(lines: readonly SessionLine[]): number {
  return lines.reduce((sum, l) => sum + (l.minutes ?? 0), 0);
}

/** What the minutes come to, held against the length of the class. */
export function minutesWords(lines: readonly SessionLine[], length: number): string {
  const sum = minutesOf(lines);
  const without = lines.filter((l) => l.minutes === null).length;
  const unsaid = without === 0 ? '' : ` ${without === 1 ? 'One dance has' : `${without} dances have`} no minutes yet.`;
  const free = length - sum;
  if (free < 0) return `${sum} minutes for ${length}: ${-free} too many.${unsaid}`;
  if (free === 0) return `${sum} of ${length} minutes: it comes out even.${unsaid}`;
  return `${sum} of ${length} minutes; ${free} ${free === 1 ? 'is' : 'are'} free.${unsaid}`;
}

/** The lines with a dance put at the end of its role; once is enough for a role. */
export function withLine(lines: readonly SessionLine[], line: SessionLine): SessionLine[] {
  const isThere = lines.some((l) => l.role === line.role && l.danceId !== null && l.danceId === line.danceId);
  return isThere ? [...lines] : inOrder([...lines, line]);
}
