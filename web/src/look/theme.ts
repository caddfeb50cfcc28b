/** Light, dark or high contrast: as the system has it, unless she says otherwise. */
export const THEMES = ['system', 'light', 'dark', 'contrast'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'scuff.theme';

/** What each is called. */
export const themeWords: Record<Theme, string> = {
  system: 'As this device has it',
  light: 'Light',
  dark: 'Dark',
  contrast: 'High contrast',
};

/** What she chose last. */
export function chosenTheme(): Theme {
  const kept = localStorage.getItem(KEY);
  return THEMES.find((t) => t === kept) ?? 'system';
}

/** Takes a theme. */
export function chooseTheme(theme: Theme) {
  localStorage.setItem(KEY, theme);
  if (theme === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}

/** As she left it. */
export function restoreTheme() {
  chooseTheme(chosenTheme());
}
