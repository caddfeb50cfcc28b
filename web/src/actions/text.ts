import type { Action } from './action';

const actions: readonly Action[] = [
  {
    name: 'Mend the first complaint',
    key: 'Ctrl+.',
    can: ({ work }) => (work.reading?.complaints.some((c) => c.fixes.length > 0) ?? false) && work.room !== 'book',
    perform: ({ work, editor }) => {
      const at = work.place;
      const open = work.reading?.complaints.filter((c) => c.fixes.length > 0) ?? [];
      const near = open.find((c) => c.from <= at && at <= c.to) ?? open[0];
      if (near) editor?.mend(near, 0);
    },
  },
  { name: 'Tidy the text', can: ({ work }) => work.dance !== null, perform: ({ work }) => void work.tidy() },
  {
    name: 'Write: put the cursor into the text',
    key: 'Alt+T',
    can: ({ work }) => work.room !== 'book',
    perform: ({ editor }) => editor?.focus(),
  },
  { name: 'Show the guide for the first minutes', perform: (doing) => doing.openGuide() },
  { name: 'Show everything that can be done', key: 'Ctrl+K', perform: (doing) => doing.openPalette() },
  {
    name: 'Write a new dance',
    perform: ({ work }) =>
      void work.create('New dance\n\nlevel: beginner\ncounts: 32\nwalls: 4\nstart: weight on L\n\nsection 1\n1-2   \n'),
  },
];

export default actions;
