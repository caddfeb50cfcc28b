/** How a night stands against its clock. Knows no dance; only seconds and what is planned in them. */

/** So much off the plan is nothing in a hall, in seconds. */
export const GRACE = 90;

/** A line as far as time is concerned, in seconds from the origin of the night. */
export interface TimedLine {
  startSecond: number;
  seconds: number;
}

/** Where the night is: seconds from the origin, by the program's clock. */
export function secondOf(now: number, origin: string, ahead: number): number {
  return (now + ahead - Date.parse(origin)) / 1000;
}

/** How far the program's clock is ahead of this device's, in milliseconds. */
export function aheadOf(programNow: string, now: number): number {
  return Date.parse(programNow) - now;
}

/**
 * How late the present line will be over, in seconds; negative when before its time. It takes as long as planned, or longer if it is still going on.
 * @param since When it began.
 */
export function lateBy(line: TimedLine, since: number, second: number): number {
  return Math.max(since + line.seconds, second) - (line.startSecond + line.seconds);
}

/** The same in words. */
export function lateWords(late: number): string {
  if (Math.abs(late) < GRACE) return 'On time';
  const minutes = Math.round(Math.abs(late) / 60);
  const long = `${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
  return late > 0 ? `Running ${long} late` : `${long} ahead`;
}

/** Whether what is still to come no longer fits before the end. */
export function isShort(lines: readonly TimedLine[], since: number, second: number, end: number): boolean {
  const first = lines[0];
  if (!first) return false;
  const last = lines[lines.length - 1] as TimedLine;
  return last.startSecond + last.seconds + Math.max(0, lateBy(first, since, second)) > end + GRACE;
}

/** A moment by the clock of the place, `20:05`. */
export function clockOf(second: number, origin: string): string {
  const at = new Date(Date.parse(origin) + second * 1000);
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}
