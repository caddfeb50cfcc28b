import { expect, test } from 'vitest';
import { ACTIONS, keyOf } from '.';

const event = (
  key: string,
  code: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {},
) => ({
  key,
  code,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

test('a key is the same on every keyboard', () => {
  expect(keyOf(event('p', 'KeyP', { altKey: true }))).toBe('Alt+P');
  expect(keyOf(event('π', 'KeyP', { altKey: true }))).toBe('Alt+P');
  expect(keyOf(event('k', 'KeyK', { metaKey: true }))).toBe('Ctrl+K');
  expect(keyOf(event('F8', 'F8'))).toBe('F8');
  expect(keyOf(event('≥', 'Period', { altKey: true }))).toBe('Alt+.');
});

test('no two actions share a key or a name', () => {
  const keys = ACTIONS.map((a) => a.key).filter((k) => k !== undefined);
  expect(new Set(keys).size).toBe(keys.length);
  const names = ACTIONS.map((a) => a.name);
  expect(new Set(names).size).toBe(names.length);
});

test('what a browser on some system does with a key is left to it', () => {
  const taken = ['Alt+Left', 'Alt+Right', 'Ctrl+S', 'Ctrl+P', 'Ctrl+T', 'Ctrl+W', 'Ctrl+N', 'Alt+D', 'Alt+F', 'Alt+E'];
  expect(ACTIONS.filter((a) => a.key && taken.includes(a.key)).map((a) => a.name)).toEqual([]);
});
