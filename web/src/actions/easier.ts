import type { Action } from './action';
import { post } from '../lib/api';
import type { VersionAnswer } from '../lib/contract';
import type { Workspace } from '../state/workspace.svelte';

/** Makes a new dance in the book of the one that is open. */
async function version(work: Workspace, path: string, body: object) {
  const answer = await work.try(() => post<VersionAnswer>(path, { text: work.text, ...body }));
  if (!answer) return;
  await work.create(answer.text);
  if (answer.remarks.length > 0) work.say(answer.remarks.join(' '));
}

const actions: readonly Action[] = [
  {
    name: 'Offer something easier',
    key: 'Alt+O',
    can: ({ work }) => work.dance !== null && work.room === 'write',
    perform: (doing) => doing.openEasier(),
  },
  {
    name: 'Make an easier version of the dance for beginners',
    can: ({ work }) => work.dance !== null,
    perform: ({ work }) =>
      void version(work, '/easier/version', { for: 'level', level: 'beginner', from: null, to: null }),
  },
  {
    name: 'Mirror the dance: the same in the other foot',
    can: ({ work }) => work.dance !== null,
    perform: ({ work }) => void version(work, '/mirror', {}),
  },
];

export default actions;
