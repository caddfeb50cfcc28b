/** First texts of a new dance. */
export const STARTERS: readonly { name: string; text: string }[] = [
  {
    name: 'Write a dance of 32 counts',
    text: 'New dance\n\nlevel: beginner\ncounts: 32\nwalls: 4\nstart: weight on L\n\nsection 1\n1-2   \n',
  },
  {
    name: 'Write a waltz of 24 counts',
    text: 'New waltz\n\nlevel: beginner\ncounts: 24\nwalls: 4\nrhythm: waltz\nstart: weight on R\n\nsection 1\n1-3   \n',
  },
];
