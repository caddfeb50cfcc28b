/** How far a lesson is: which steps are ticked, whose turn it is, how long it has been, what to leave out. Knows no dance; only minutes. */
import type { LessonStepItem } from '../lib/contract';

/** What was done of a lesson on one day. Times are in milliseconds of the clock that is handed in. */
export interface Progress {
  /** When the lesson began; null before. */
  startedAt: number | null;
  /** When each step was ticked, by its id; a step of the plan that is not there is still to come. */
  ticks: Record<string, number>;
}

/** Where a lesson stands. Seconds. */
export interface Standing {
  /** The step whose turn it is; null before the first plan and after the last step. */
  current: LessonStepItem | null;
  /** How long it has been going on. */
  inStep: number;
  /** How much of its time is left; below zero when it is up. */
  leftOfStep: number;
  /** How much of the whole lesson is left; below zero when it is over. */
  leftOfAll: number;
  /** How much more is still to do than there is time for; zero when all is well. */
  late: number;
  /** Steps to leave out so that the rest fits, the first to go first; empty when all is well. */
  leaveOut: LessonStepItem[];
  /** Whether leaving them out is enough. */
  isEnough: boolean;
}

/** A class may be this much behind before anything is said: half a minute is nothing in a hall. Seconds. */
export const GRACE = 60;

/** Nothing done yet. */
export const NOTHING: Progress = { startedAt: null, ticks: {} };

/**
 * Where the lesson stands.
 * @param steps The steps in order, as the program planned them.
 * @param seconds How long the lesson is.
 * @param progress What was done.
 * @param now The time in milliseconds.
 */
export function standing(steps: LessonStepItem[], seconds: number, progress: Progress, now: number): Standing {
  const ahead = steps.filter((s) => progress.ticks[s.id] === undefined);
  const current = ahead[0] ?? null;
  if (progress.startedAt === null) {
    return {
      current,
      inStep: 0,
      leftOfStep: current?.seconds ?? 0,
      leftOfAll: seconds,
      late: 0,
      leaveOut: [],
      isEnough: true,
    };
  }

  // a step begins when the last tick was set, whichever that was
  const begun = Math.max(progress.startedAt, ...Object.values(progress.ticks));
  const inStep = current ? Math.max(0, (now - begun) / 1000) : 0;
  const leftOfAll = seconds - Math.max(0, (now - progress.startedAt) / 1000);
  const toDo = ahead.slice(1).reduce((sum, s) => sum + s.seconds, 0) + Math.max(0, (current?.seconds ?? 0) - inStep);
  const late = current ? Math.max(0, toDo - leftOfAll) : 0;
  const chosen: LessonStepItem[] = [];
  let saved = 0;
  if (late > GRACE) {
    const able = ahead
      .slice(1)
      .filter((s) => s.leaveOut !== null)
      .sort((a, b) => (a.leaveOut ?? 0) - (b.leaveOut ?? 0));
    for (const step of able) {
      if (saved >= late - GRACE) break;
      chosen.push(step);
      saved += step.seconds;
    }
  }
  return {
    current,
    inStep,
    leftOfStep: (current?.seconds ?? 0) - inStep,
    leftOfAll,
    late: late > GRACE ? late : 0,
    leaveOut: chosen,
    isEnough: late <= GRACE || saved >= late - GRACE,
  };
}

/** The progress with a step ticked, or no longer. The first tick begins the lesson. */
export function ticked(progress: Progress, id: string, isDone: boolean, now: number): Progress {
  const ticks = Object.fromEntries(Object.entries(progress.ticks).filter(([key]) => key !== id));
  if (isDone) ticks[id] = now;
  return { startedAt: progress.startedAt ?? (isDone ? now : null), ticks };
}

/** Minutes and seconds as a clock shows them: `4:05`; with a minus sign when they are over. */
export function clock(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const sign = seconds <= -1 ? '−' : '';
  return `${sign}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** A length as one says it: `4 minutes`, `1 minute`, `half a minute`. */
export function spoken(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return minutes < 1 ? 'half a minute' : minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
