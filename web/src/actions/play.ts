import type { Action } from './action';

const actions: readonly Action[] = [
  { name: 'Play or pause', key: 'Alt+P', perform: ({ player }) => player.toggle() },
  { name: 'Step to the next count', key: 'Alt+.', perform: ({ player }) => player.step(1) },
  { name: 'Step to the count before', key: 'Alt+,', perform: ({ player }) => player.step(-1) },
  { name: 'Go back to the first count', key: 'Alt+Home', perform: ({ player }) => player.seek(0) },
  { name: 'Practise slower', key: 'Alt+Down', perform: ({ player }) => player.slower() },
  { name: 'Practise faster', key: 'Alt+Up', perform: ({ player }) => player.faster() },
];

export default actions;
