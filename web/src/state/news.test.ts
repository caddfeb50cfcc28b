import { afterEach, expect, test, vi } from 'vitest';
import { Workspace } from './workspace.svelte';

class News {
  static last: News;
  onmessage: ((event: { data: string }) => void) | null = null;
  constructor() {
    News.last = this;
  }
  close() {}
}

const item = {
  id: 'd1',
  title: '',
  by: '',
  facts: '',
  standing: '',
  isClean: true,
  songs: [],
  tags: [],
  savedAt: '',
  removedAt: null,
  fileName: null,
};
const json = (body: unknown) =>
  new Response(JSON.stringify(body), { status: 200, headers: { 'Content-Type': 'application/json' } });

afterEach(() => {
  vi.unstubAllGlobals();
  localStorage.clear();
});

/** An open dance at revision 1; the next look at it is answered when the test says so. */
async function opened() {
  let looked: ((body: unknown) => void) | null = null;
  let looks = 0;
  vi.stubGlobal('EventSource', News);
  vi.stubGlobal('fetch', (path: string, init: RequestInit) => {
    if (path === '/api/dances/d1' && init.method === 'GET') {
      if (looks++ === 0) return Promise.resolve(json({ item, revision: 1, text: 'one' }));
      return new Promise((resolve) => (looked = (body) => resolve(json(body))));
    }
    if (path === '/api/dances/d1' && init.method === 'PUT')
      return Promise.resolve(json({ revision: 2, trouble: null }));
    return new Promise(() => {});
  });
  const work = new Workspace();
  await work.open('d1');
  work.listen();
  News.last.onmessage?.({ data: JSON.stringify({ dances: ['d1'], tracks: [], everything: false }) });
  return { work, answer: (body: unknown) => looked?.(body) };
}

test('an answer that a save of this page has overtaken takes nothing back', async () => {
  const { work, answer } = await opened();
  work.typed('one two');
  await vi.waitFor(() => expect(work.standing).toBe('kept'), { timeout: 3000 });
  answer({ item, revision: 1, text: 'one' });
  await new Promise((r) => setTimeout(r, 30));
  expect(work.text).toBe('one two');
});

test('what another page has saved is taken over', async () => {
  const { work, answer } = await opened();
  answer({ item, revision: 2, text: 'from elsewhere' });
  await vi.waitFor(() => expect(work.text).toBe('from elsewhere'));
});
