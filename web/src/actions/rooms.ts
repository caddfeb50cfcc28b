import type { Action } from './action';
import { ROOMS } from '../state/workspace.svelte';

const THINGS: readonly string[] = ['book', 'classes', 'evening'];

const actions: readonly Action[] = ROOMS.map((room, i) => ({
  name: `Go to ${THINGS.includes(room) ? 'the ' : ''}${room}`,
  key: `Alt+${i + 1}`,
  perform: ({ work }) => work.go(room),
}));

export default actions;
