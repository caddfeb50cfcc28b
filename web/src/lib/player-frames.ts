/** One animation loop for everything that moves on the page; it stands still when nothing does. */

/** Draws the moment; says true when it wants another frame although the dance stands (a camera that is still settling). */
export type FrameListener = (count: number, seconds: number) => boolean | void;

/** Calls all listeners in one animation frame. */
export class FrameLoop {
  private readonly listeners = new Set<FrameListener>();
  private pending = 0;
  private last = 0;

  /**
   * @param count The count to draw.
   * @param moves Whether the dance goes on.
   */
  constructor(
    private readonly count: () => number,
    private readonly moves: () => boolean,
  ) {}

  /** Adds a listener and draws once; returns how to take it away. */
  add(listener: FrameListener): () => void {
    this.listeners.add(listener);
    this.wake();
    return () => {
      this.listeners.delete(listener);
      if (this.listeners.size === 0) this.rest();
    };
  }

  /** Draws the next frame, whether something moves or not. */
  wake(): void {
    if (this.pending === 0 && this.listeners.size > 0) this.pending = requestAnimationFrame(this.draw);
  }

  private rest(): void {
    if (this.pending !== 0) cancelAnimationFrame(this.pending);
    this.pending = 0;
    this.last = 0;
  }

  private readonly draw = (time: number): void => {
    this.pending = 0;
    // after a pause of the page a camera must not leap by the time slept
    const seconds = this.last === 0 ? 0 : Math.min(0.1, (time - this.last) / 1000);
    const count = this.count();
    let goesOn = this.moves();
    for (const listener of this.listeners) {
      if (listener(count, seconds) === true) goesOn = true;
    }
    this.last = goesOn ? time : 0;
    if (goesOn) this.wake();
  };
}
