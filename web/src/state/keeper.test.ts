import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { findDraft } from './drafts';
import { Keeper, type Standing } from './keeper';

let said: Standing[] = [];
let clashes = 0;
const door = { standing: (s: Standing) => void said.push(s), clash: () => void clashes++, revision: () => {} };

function answer(status: number, body: unknown) {
  return Promise.resolve(
    new Response(JSON.stringify(body), { status, headers: { 'Content-Type': 'application/json' } }),
  );
}

beforeEach(() => {
  said = [];
  clashes = 0;
  localStorage.clear();
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a text is a draft before it is sent, and none once the program has it', async () => {
  const fetched = vi.fn(() => answer(200, { revision: 4, trouble: null }));
  vi.stubGlobal('fetch', fetched);
  const keeper = new Keeper('d', 'a', 3, 'h', door);
  keeper.changed('ab');
  expect(findDraft('d')).toEqual({ text: 'ab', revision: 3 });
  await vi.advanceTimersByTimeAsync(300);
  expect(fetched).toHaveBeenCalledTimes(1);
  expect(findDraft('d')).toBeNull();
  expect(keeper.revision).toBe(4);
  expect(said.at(-1)).toBe('kept');
});

test('while the program is away the draft stays, and it is tried again until it is there', async () => {
  let isThere = false;
  vi.stubGlobal('fetch', () =>
    isThere ? answer(200, { revision: 9, trouble: null }) : Promise.reject(new TypeError('refused')),
  );
  const keeper = new Keeper('d', 'a', 3, 'h', door);
  keeper.changed('abc');
  await vi.advanceTimersByTimeAsync(5000);
  expect(said.at(-1)).toBe('away');
  expect(findDraft('d')?.text).toBe('abc');
  isThere = true;
  await vi.advanceTimersByTimeAsync(2000);
  expect(said.at(-1)).toBe('kept');
  expect(findDraft('d')).toBeNull();
});

test('what was changed elsewhere is never written over', async () => {
  const fetched = vi.fn(() => answer(409, { sentence: 'Changed elsewhere.', revision: 8, text: 'theirs' }));
  vi.stubGlobal('fetch', fetched);
  const keeper = new Keeper('d', 'a', 3, 'h', door);
  keeper.changed('mine');
  await vi.advanceTimersByTimeAsync(6000);
  expect(fetched).toHaveBeenCalledTimes(1);
  expect(clashes).toBe(1);
  expect(findDraft('d')?.text).toBe('mine');
});

test('what is typed during a save is saved after it', async () => {
  const bodies: string[] = [];
  let release: (() => void) | undefined;
  vi.stubGlobal('fetch', (_: string, init: RequestInit) => {
    bodies.push((JSON.parse(init.body as string) as { text: string }).text);
    return bodies.length === 1
      ? new Promise<Response>(
          (resolve) => (release = () => void answer(200, { revision: 4, trouble: null }).then(resolve)),
        )
      : answer(200, { revision: 5, trouble: null });
  });
  const keeper = new Keeper('d', '', 3, 'h', door);
  keeper.changed('one');
  await vi.advanceTimersByTimeAsync(300);
  keeper.changed('one two');
  await vi.advanceTimersByTimeAsync(300);
  release?.();
  await vi.advanceTimersByTimeAsync(600);
  expect(bodies).toEqual(['one', 'one two']);
  expect(keeper.revision).toBe(5);
  expect(findDraft('d')).toBeNull();
});
