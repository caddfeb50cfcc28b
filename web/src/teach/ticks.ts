/** Keeps what was ticked of a lesson in the browser, per dance and day, so that a tablet that slept goes on where it was. */
import { NOTHING, type Progress } from './progress';

const PREFIX = 'scuff.lesson.';

/** So many days are kept: a class meets weekly, and last week's ticks are no use after it. */
const DAYS = 14;

const DAY = 24 * 60 * 60 * 1000;

/** The day of a time, where she is: `2026-11-28`. */
export function dayOf(now: number): string {
  const date = new Date(now);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

function key(dance: string, day: string): string {
  return `${PREFIX}${day}.${dance}`;
}

/** What was done of a dance's lesson on a day. */
export function findProgress(dance: string, now: number, storage: Storage = localStorage): Progress {
  try {
    const kept: unknown = JSON.parse(storage.getItem(key(dance, dayOf(now))) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return NOTHING;
    const { startedAt, ticks } = kept as { startedAt?: unknown; ticks?: unknown };
    if (typeof ticks !== 'object' || ticks === null) return NOTHING;
    return {
      startedAt: typeof startedAt === 'number' ? startedAt : null,
      ticks: Object.fromEntries(
        Object.entries(ticks).filter((tick): tick is [string, number] => typeof tick[1] === 'number'),
      ),
    };
  } catch {
    // what another hand has put there is no progress
    return NOTHING;
  }
}

/**
 * Keeps what was done, and lets go what is older than two weeks.
 * @returns Whether the browser kept it.
 */
export function keepProgress(dance: string, progress: Progress, now: number, storage: Storage = localStorage): boolean {
  try {
    const oldest = `${PREFIX}${dayOf(now - DAYS * DAY)}`;
    for (const name of Array.from({ length: storage.length }, (_, i) => storage.key(i))) {
      if (name?.startsWith(PREFIX) && name < oldest) storage.removeItem(name);
    }
    storage.setItem(key(dance, dayOf(now)), JSON.stringify(progress));
    return true;
  } catch {
    return false;
  }
}
