/**
 * Texts that the program has not confirmed yet, kept in this browser: written before anything is sent, and taken away only when the program says that
 * the very text is on its disk. So neither a program that is killed nor a page that is shut costs a letter.
 */

/** A text that is not confirmed. */
export interface Draft {
  text: string;
  /** The revision it was written upon. */
  revision: number;
}

const KEY = 'scuff.draft.';

/** The draft of a dance, or null. */
export function findDraft(id: string, store: Storage = localStorage): Draft | null {
  try {
    const kept: unknown = JSON.parse(store.getItem(KEY + id) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return null;
    const { text, revision } = kept as Partial<Draft>;
    return typeof text === 'string' && typeof revision === 'number' ? { text, revision } : null;
  } catch {
    // what another hand has put there is no draft
    return null;
  }
}

/** Keeps a draft; false where the browser keeps nothing (a private window that is full). */
export function keepDraft(id: string, draft: Draft, store: Storage = localStorage): boolean {
  try {
    store.setItem(KEY + id, JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

/** The text is on the disk of the program: its draft goes, unless she has typed on since. */
export function dropDraft(id: string, text: string, store: Storage = localStorage): void {
  if (findDraft(id, store)?.text === text) store.removeItem(KEY + id);
}

/** Ids of dances that have a draft. */
export function drafted(store: Storage = localStorage): string[] {
  const ids: string[] = [];
  for (let i = 0; i < store.length; i++) {
    const key = store.key(i);
    if (key?.startsWith(KEY)) ids.push(key.slice(KEY.length));
  }
  return ids;
}
