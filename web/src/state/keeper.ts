/**
 * Keeps a text with the program while she types: at once in the browser, a moment later on the program's disk, again and again until it is there. Never
 * writes over what someone else has written in the meantime.
 */
import { put, Trouble } from '../lib/api';
import type { DanceClash, DanceSaved } from '../lib/contract';
import { dropDraft, keepDraft } from './drafts';

/** How it stands with the text. */
export type Standing = 'kept' | 'keeping' | 'away' | 'clash' | 'trouble';

/** What the keeper tells. */
export interface KeeperDoor {
  standing(now: Standing, sentence: string): void;
  clash(clash: DanceClash): void;
  revision(now: number): void;
}

const PAUSE = 250;
const AGAIN = 1500;

export class Keeper {
  #text: string;
  #kept: string;
  #revision: number;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isSending = false;
  #isShut = false;

  constructor(
    readonly id: string,
    text: string,
    revision: number,
    private readonly hand: string,
    private readonly door: KeeperDoor,
  ) {
    this.#text = text;
    this.#kept = text;
    this.#revision = revision;
  }

  get revision(): number {
    return this.#revision;
  }

  /** Whether the program has all of it. */
  get isKept(): boolean {
    return this.#text === this.#kept;
  }

  /** She has typed. */
  changed(text: string) {
    this.#text = text;
    if (this.isKept && !this.#isSending) {
      dropDraft(this.id, text);
      this.door.standing('kept', '');
      return;
    }
    keepDraft(this.id, { text, revision: this.#revision });
    this.door.standing('keeping', '');
    this.#later(PAUSE);
  }

  /** Another text is there, known to this page. */
  learned(text: string, revision: number) {
    this.#kept = text;
    this.#revision = revision;
  }

  /** Sends what is not kept yet, now. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer);
    if (this.#isSending || this.#isShut || this.isKept) return;
    this.#isSending = true;
    const text = this.#text;
    try {
      const saved = await put<DanceSaved>(`/dances/${this.id}`, { text, revision: this.#revision, hand: this.hand });
      this.#kept = text;
      this.#revision = saved.revision;
      this.door.revision(saved.revision);
      dropDraft(this.id, text);
      if (this.isKept) this.door.standing('kept', saved.trouble ?? '');
      else keepDraft(this.id, { text: this.#text, revision: this.#revision });
    } catch (e) {
      if (e instanceof Trouble && e.status === 409) {
        this.door.standing('clash', e.message);
        this.door.clash(e.body as DanceClash);
        this.#isSending = false;
        return;
      }
      const words = e instanceof Error ? e.message : '';
      this.door.standing(e instanceof Trouble && e.status === 0 ? 'away' : 'trouble', words);
      this.#isSending = false;
      if (!(e instanceof Trouble) || e.status === 0 || e.status >= 500) this.#later(AGAIN);
      return;
    }
    this.#isSending = false;
    if (!this.isKept) this.#later(PAUSE);
  }

  /** She goes on to another dance; what is not kept stays a draft of this browser. */
  shut() {
    clearTimeout(this.#timer);
    void this.flush();
    this.#isShut = true;
  }

  #later(pause: number) {
    clearTimeout(this.#timer);
    if (!this.#isShut) this.#timer = setTimeout(() => void this.flush(), pause);
  }
}
