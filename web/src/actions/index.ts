import type { Action, Doing } from './action';

export type { Action, Doing } from './action';

// Every file of this folder is an action, or a few that belong together; no list names them.
const files = import.meta.glob<{ default: Action | readonly Action[] }>(
  ['./*.ts', '!./index.ts', '!./action.ts', '!./*.test.ts'],
  { eager: true },
);

/** All actions, by name. */
export const ACTIONS: readonly Action[] = Object.values(files)
  .flatMap((f) => f.default)
  .sort((a, b) => a.name.localeCompare(b.name, 'en'));

/** Keys by where they lie: with Alt a Mac types signs of its own, and digits move with the language of the keyboard. */
const PLACES: Record<string, string> = { Comma: ',', Period: '.', Space: 'Space' };

/** The key of an event as actions print it. Command on a Mac is Ctrl elsewhere. */
export function keyOf(
  event: Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): string {
  const place = PLACES[event.code] ?? /^(?:Key|Digit)(.)$/.exec(event.code)?.[1];
  const name =
    event.altKey && place
      ? place
      : event.key === ' '
        ? 'Space'
        : event.key.length === 1
          ? event.key.toUpperCase()
          : event.key.replace('Arrow', '');
  return [
    event.ctrlKey || event.metaKey ? 'Ctrl' : '',
    event.altKey ? 'Alt' : '',
    event.shiftKey && event.key.length > 1 ? 'Shift' : '',
    name,
  ]
    .filter((p) => p !== '')
    .join('+');
}

/** The action that a key asks for, if it can be done. */
export function findAction(event: KeyboardEvent, doing: Doing): Action | null {
  if (event.defaultPrevented) return null;
  const key = keyOf(event);
  return ACTIONS.find((a) => a.key === key && (a.can?.(doing) ?? true)) ?? null;
}
