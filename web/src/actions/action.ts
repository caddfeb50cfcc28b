import type { Player } from '../lib/player';
import type { Workspace } from '../state/workspace.svelte';
import type { Editor } from '../write/editor';

/** What an action may use. */
export interface Doing {
  readonly work: Workspace;
  readonly player: Player;
  readonly editor: Editor | null;
  openPalette(): void;
  openGuide(): void;
  openHall(): void;
  openEasier(): void;
}

/** Something she can do from the keyboard and from the list of everything that can be done. One file in this folder each. */
export interface Action {
  /** A verb phrase. */
  readonly name: string;
  /** Its key, as it is printed: `Ctrl+Enter`, `F8`. */
  readonly key?: string;
  /** Whether it can be done now. */
  can?(doing: Doing): boolean;
  perform(doing: Doing): void;
}
