/** The hall as her page has it: open or shut, who is there, and what it is told. */
import { get, post, Trouble } from '../lib/api';
import type { HallAnswer, HallAsk, HallMe } from '../lib/contract';
import type { Player } from '../lib/player';
import { handName } from '../state/hand';
import type { Workspace } from '../state/workspace.svelte';
import type { Practice } from '../teach/practice.svelte';
import { answer } from './asking';
import { HallTeller, type Shown } from './teller';

const HAND = 'scuff.hall.hand';

export class HallDesk {
  isOpen = $state(false);
  /** `here`, `tablet` or `floor`; empty until known. */
  circle = $state('');
  /** How it stands; only on the machine that the program runs on. */
  answer = $state.raw<HallAnswer | null>(null);

  /** What the room Teach dances and calls; null elsewhere. */
  practised: Omit<Shown, 'title' | 'eight'> | null = null;

  /** The practice of the room Teach; null elsewhere. */
  practice: Practice | null = null;

  readonly teller: HallTeller;
  private remote: EventSource | null = null;

  constructor(
    private readonly work: Workspace,
    private readonly player: Player,
  ) {
    // a page that is loaded anew goes on leading the hall
    const hand = sessionStorage.getItem(HAND) ?? handName();
    sessionStorage.setItem(HAND, hand);
    this.teller = new HallTeller(
      hand,
      player,
      () =>
        work.floor && {
          title: work.reading?.title || work.dance?.title || '',
          eight: work.reading?.beatsPerBar === 3 ? 6 : 8,
          floor: this.practised?.floor ?? {
            text: work.text,
            track: work.floorTrack,
            height: null,
            ending: false,
            easier: false,
            plays: work.floorSound,
          },
          calls: this.practised?.calls ?? null,
        },
      () => work.view,
    );
  }

  /** Looks whether the hall is open; it may have been opened from another page. */
  async look(): Promise<void> {
    try {
      const me = await get<HallMe>('/hall/me');
      this.circle = me.circle;
      await this.stands(me.isOpen, false);
    } catch {
      // the page says elsewhere that the program is away
    }
  }

  /** Asks who is there. */
  async ask(): Promise<void> {
    try {
      this.answer = await get<HallAnswer>('/hall');
      await this.stands(this.answer.isOpen, false);
    } catch (e) {
      if (e instanceof Trouble && e.status === 0) this.answer = null;
    }
  }

  /** Opens it, or makes another code. */
  async open(guests: 'tablet' | 'floor'): Promise<void> {
    const answer = await this.work.try(() => post<HallAnswer>('/hall/open', { guests }));
    if (!answer) return;
    this.answer = answer;
    await this.stands(true, true);
  }

  /** Shuts it: every guest is out at once. */
  async shut(): Promise<void> {
    const answer = await this.work.try(() => post<HallAnswer>('/hall/shut', {}));
    if (!answer) return;
    this.answer = answer;
    await this.stands(answer.isOpen, false);
    this.work.say('The hall is shut. Nobody but this machine is answered any more.');
  }

  /** Hears no remote any more. */
  close(): void {
    this.remote?.close();
    this.remote = null;
  }

  // What a remote asks reaches every page; the one that the hall follows does it.
  private hear(): void {
    if (this.remote) return;
    this.remote = new EventSource('/api/hall/follow');
    this.remote.addEventListener('ask', (event: MessageEvent<string>) => {
      if (!this.teller.isLeading) return;
      answer(JSON.parse(event.data) as HallAsk, {
        player: this.player,
        practice: this.practice,
        see: (view) => (this.work.view = view),
      });
    });
    this.remote.addEventListener('shut', () => this.close());
  }

  private async stands(isOpen: boolean, takes: boolean): Promise<void> {
    this.isOpen = isOpen;
    if (isOpen) this.hear();
    else this.close();
    if (!isOpen) this.teller.stop();
    else if (takes || !this.teller.isTelling) await this.teller.start(takes);
  }
}
