import type { Action } from './action';
import { ROOMS } from '../state/workspace.svelte';

const actions: readonly Action[] = ROOMS.map((room, i) => ({
  name: `Go to ${room === 'book' ? 'the book' : room}`,
  key: `Alt+${i + 1}`,
  perform: ({ work }) => work.go(room),
}));

export default actions;
