import { beforeEach, expect, test } from 'vitest';
import { drafted, dropDraft, findDraft, keepDraft } from './drafts';

beforeEach(() => localStorage.clear());

test('a draft is found again as it was kept', () => {
  expect(keepDraft('a1', { text: 'Ebb\n“½”', revision: 7 })).toBe(true);
  expect(findDraft('a1')).toEqual({ text: 'Ebb\n“½”', revision: 7 });
  expect(drafted()).toEqual(['a1']);
});

test('a draft goes only with the very text that was kept by the program', () => {
  keepDraft('a1', { text: 'later', revision: 7 });
  dropDraft('a1', 'earlier');
  expect(findDraft('a1')?.text).toBe('later');
  dropDraft('a1', 'later');
  expect(findDraft('a1')).toBeNull();
});

test('what another hand has put there is no draft', () => {
  localStorage.setItem('scuff.draft.x', '{"text":5}');
  localStorage.setItem('scuff.draft.y', 'not json');
  expect(findDraft('x')).toBeNull();
  expect(findDraft('y')).toBeNull();
});

test('a browser that keeps nothing says so', () => {
  const full = {
    ...localStorage,
    setItem() {
      throw new DOMException('full', 'QuotaExceededError');
    },
  } as unknown as Storage;
  expect(keepDraft('a', { text: 't', revision: 1 }, full)).toBe(false);
});
