/** The colours of the look, as the page has them now. */
export interface Colours {
  paper: string;
  floor: string;
  ink: string;
  soft: string;
  line: string;
  lamp: string;
  tide: string;
  /** The family of type. */
  type: string;
  isDark: boolean;
}

/** Reads the colours at an element; where the system forces its own, those. */
export function coloursAt(element: Element): Colours {
  const style = getComputedStyle(element);
  const of = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
  const isForced = matchMedia('(forced-colors: active)').matches;
  if (isForced) {
    const [paper, ink, lamp] = systemColours(element);
    return {
      paper,
      floor: paper,
      ink,
      soft: ink,
      line: ink,
      lamp,
      tide: ink,
      type: of('--type', 'sans-serif'),
      isDark: isDark(paper),
    };
  }
  const paper = of('--paper', '#fff');
  return {
    paper,
    floor: of('--floor', '#eee'),
    ink: of('--ink', '#000'),
    soft: of('--soft', '#444'),
    line: of('--line', '#888'),
    lamp: of('--lamp', '#b45309'),
    tide: of('--tide', '#0f5e6b'),
    type: of('--type', 'sans-serif'),
    isDark: isDark(paper),
  };
}

/** Calls back when the colours may have changed; returns how to end that. */
export function onColours(change: () => void): () => void {
  const media = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) => matchMedia(query));
  for (const query of media) query.addEventListener('change', change);
  const watch = new MutationObserver(change);
  watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class', 'style'] });
  return () => {
    for (const query of media) query.removeEventListener('change', change);
    watch.disconnect();
  };
}

function systemColours(element: Element): [string, string, string] {
  const probe = document.createElement('span');
  element.append(probe);
  const found = ['Canvas', 'CanvasText', 'Highlight'].map((name) => {
    probe.style.color = name;
    return getComputedStyle(probe).color;
  });
  probe.remove();
  return [found[0]!, found[1]!, found[2]!];
}

function isDark(colour: string): boolean {
  const [r, g, b] = rgb(colour);
  return 0.299 * r + 0.587 * g + 0.114 * b < 128;
}

/** Red, green and blue, 0 to 255, of `#rgb`, `#rrggbb` or `rgb(…)`. */
export function rgb(colour: string): [number, number, number] {
  const hex = /^#([0-9a-f]{6}|[0-9a-f]{3})/i.exec(colour)?.[1];
  if (hex) {
    const full = hex.length === 3 ? [...hex].map((c) => c + c).join('') : hex;
    const value = Number.parseInt(full, 16);
    return [value >> 16, (value >> 8) & 255, value & 255];
  }
  const parts = colour.match(/[\d.]+/g)?.map(Number) ?? [];
  return [parts[0] ?? 0, parts[1] ?? 0, parts[2] ?? 0];
}
