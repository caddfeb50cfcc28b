/**
 * The last answers for each dance, kept in this browser, so that a dance can be read and danced while the program is away. They are shown only for the very
 * text they were given for.
 */
import type { FloorAnswer, ReadAnswer } from '../lib/contract';

/** What was answered for a text. */
export interface KeptAnswers {
  text: string;
  reading: ReadAnswer | null;
  floor: FloorAnswer | null;
}

const NAME = 'scuff';
const STORE = 'answers';

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('no store'));
  });
}

function done<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('no answer'));
  });
}

/** Keeps the answers of a dance; a browser that keeps nothing keeps nothing. */
export async function keepAnswers(id: string, answers: KeptAnswers): Promise<void> {
  try {
    const db = await open();
    await done(db.transaction(STORE, 'readwrite').objectStore(STORE).put(answers, id));
    db.close();
  } catch {
    // a private window
  }
}

/** The answers that were kept for a dance and this text, or null. */
export async function findAnswers(id: string, text: string): Promise<KeptAnswers | null> {
  try {
    const db = await open();
    const kept = (await done(db.transaction(STORE).objectStore(STORE).get(id))) as KeptAnswers | undefined;
    db.close();
    return kept?.text === text ? kept : null;
  } catch {
    return null;
  }
}
