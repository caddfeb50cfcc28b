/** Complaints of the reader as marks of the editor. */
import type { ReadComplaint } from './contract';

/** The words for a kind of complaint, as they are said before the sentence. */
export function kindWord(severity: string): string {
  switch (severity) {
    case 'error':
      return 'Does not come out';
    case 'question':
      return 'Question';
    case 'warning':
      return 'Look again';
    default:
      return 'Hint';
  }
}

/** How many of each kind, in words: "1 error and 2 hints". */
export function tally(complaints: readonly ReadComplaint[]): string {
  const kinds = ['error', 'question', 'warning', 'hint'];
  const parts = kinds
    .map((k) => [k, complaints.filter((c) => c.severity === k).length] as const)
    .filter(([, n]) => n > 0)
    .map(([k, n]) => `${n} ${k}${n === 1 ? '' : 's'}`);
  if (parts.length < 2) return parts[0] ?? 'nothing to mend';
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
