/** What she asks of a lesson, kept in the browser: it is the same class every week. */
import type { LessonQuestion } from '../lib/contract';

/** What is asked beside the text of the dance. */
export type Asked = Omit<LessonQuestion, 'text'>;

const KEY = 'scuff.lesson-asked';

/** The levels of a class; the page knows their names, the program what they mean. */
export const LEVELS = ['absolute beginner', 'beginner', 'improver', 'intermediate', 'advanced'] as const;

/** Lengths that are offered, in minutes. */
export const LENGTHS = [10, 15, 20, 30, 45, 60, 90] as const;

/** As long as it takes, for a class of the dance's level. */
export const USUAL: Asked = {
  minutes: null,
  class: null,
  knows: null,
  track: null,
  practiceTempo: null,
  order: null,
  knees: false,
  beginners: false,
  warmUp: true,
};

/** What she asked last. */
export function findAsked(storage: Storage = localStorage): Asked {
  try {
    const kept: unknown = JSON.parse(storage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return USUAL;
    const { minutes, class: level, knows, knees, beginners, warmUp } = kept as Partial<Record<keyof Asked, unknown>>;
    return {
      ...USUAL,
      minutes: typeof minutes === 'number' && minutes >= 1 && minutes <= 600 ? Math.floor(minutes) : null,
      class: LEVELS.find((l) => l === level) ?? null,
      knows: Array.isArray(knows) ? knows.filter((k): k is string => typeof k === 'string') : null,
      knees: knees === true,
      beginners: beginners === true,
      warmUp: warmUp !== false,
    };
  } catch {
    return USUAL;
  }
}

/** Keeps it; a browser that keeps nothing asks anew. */
export function keepAsked(asked: Asked, storage: Storage = localStorage) {
  try {
    storage.setItem(KEY, JSON.stringify(asked));
  } catch {
    // nothing of hers is lost
  }
}
