import type { ReadEdit } from './contract';

/** The text after replacements that do not overlap; what is put in at a place where something is replaced comes before it. */
export function edited(text: string, edits: readonly ReadEdit[]): string {
  return [...edits]
    .sort((a, b) => b.from - a.from || b.to - a.to)
    .reduce((now, e) => now.slice(0, e.from) + e.text + now.slice(e.to), text);
}

/** Whether the replacements lie in a text of that length; an answer to an older text may not. */
export function fits(edits: readonly ReadEdit[], length: number): boolean {
  return edits.every((e) => e.from >= 0 && e.from <= e.to && e.to <= length);
}
