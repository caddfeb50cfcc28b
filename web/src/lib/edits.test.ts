import { expect, test } from 'vitest';
import { edited, fits } from './edits';

test('replacements do not move each other, whatever their order', () => {
  const edits = [
    { from: 0, to: 3, text: 'two' },
    { from: 8, to: 8, text: '!' },
    { from: 4, to: 8, text: '' },
  ];
  expect(edited('one step', edits)).toBe('two !');
  expect(edited('one step', [...edits].reverse())).toBe('two !');
});

test('what is put in comes before what is replaced there', () => {
  expect(
    edited('ab', [
      { from: 1, to: 2, text: 'c' },
      { from: 1, to: 1, text: '-' },
    ]),
  ).toBe('a-c');
});

test('replacements beyond the text do not fit', () => {
  expect(fits([{ from: 0, to: 3, text: '' }], 3)).toBe(true);
  expect(fits([{ from: 2, to: 4, text: '' }], 3)).toBe(false);
});
