/** Complaints as sentences in the margin, each beside its line, with its mends as buttons. They scroll with the text and never cover one another. */
import { EditorView, ViewPlugin, type ViewUpdate } from '@codemirror/view';
import { StateEffect, StateField } from '@codemirror/state';
import type { ReadComplaint } from '../lib/contract';
import { kindWord } from '../lib/complain';

/** Whether two lists say the same at the same places: then what stands in the margin stays as it is. */
function areSame(a: readonly ReadComplaint[], b: readonly ReadComplaint[]): boolean {
  return (
    a.length === b.length &&
    a.every((one, i) => {
      const other = b[i]!;
      return (
        one.from === other.from &&
        one.to === other.to &&
        one.message === other.message &&
        JSON.stringify(one.fixes) === JSON.stringify(other.fixes)
      );
    })
  );
}

/** What stands in the margin now. */
export const noted = StateEffect.define<readonly ReadComplaint[]>();

/** The complaints with their places as the text stands now. */
const notes = StateField.define<readonly ReadComplaint[]>({
  create: () => [],
  update(value, tr) {
    for (const e of tr.effects) if (e.is(noted)) return areSame(value, e.value) ? value : e.value;
    if (!tr.docChanged) return value;
    return value.map((c) => ({ ...c, from: tr.changes.mapPos(c.from), to: tr.changes.mapPos(c.to) }));
  },
});

const GAP = 8;

/** One complaint in words, with its mends. */
export function noteOf(complaint: ReadComplaint, mend: (index: number) => void, show: () => void): HTMLElement {
  const note = document.createElement('article');
  note.className = `note n-${complaint.severity}`;
  const sentence = document.createElement('p');
  const kind = document.createElement('button');
  kind.className = 'note-kind';
  kind.textContent = kindWord(complaint.severity);
  kind.title = complaint.why;
  kind.addEventListener('click', show);
  sentence.append(kind, ` ${complaint.message}`);
  note.append(sentence);
  complaint.fixes.slice(0, 3).forEach((fix, i) => {
    const button = document.createElement('button');
    button.className = 'note-mend';
    button.textContent = fix.title.charAt(0).toUpperCase() + fix.title.slice(1);
    button.addEventListener('click', () => mend(i));
    note.append(button);
  });
  const why = document.createElement('details');
  const summary = document.createElement('summary');
  summary.textContent = 'Why';
  const reason = document.createElement('p');
  reason.textContent = complaint.why;
  why.append(summary, reason);
  note.append(why);
  return note;
}

/** The margin; it takes the place that the style gives it, and none where there is no room. */
export function margin(mend: (view: EditorView, complaint: ReadComplaint, index: number) => void) {
  return [
    notes,
    ViewPlugin.fromClass(
      class {
        readonly dom = document.createElement('aside');
        shown: { complaint: ReadComplaint; dom: HTMLElement }[] = [];

        constructor(readonly view: EditorView) {
          this.dom.className = 'margin';
          this.dom.setAttribute('aria-label', 'What Scuff asks about this text');
          view.scrollDOM.append(this.dom);
          this.fill();
        }

        update(update: ViewUpdate) {
          if (update.startState.field(notes) !== update.state.field(notes) && !update.docChanged) this.fill();
          else if (update.docChanged) this.follow();
          if (update.docChanged || update.geometryChanged || update.transactions.length > 0) this.place();
        }

        fill() {
          const complaints = this.view.state.field(notes);
          this.shown = complaints.map((complaint) => {
            const at = () => this.shown.find((s) => s.dom === dom)?.complaint ?? complaint;
            const dom: HTMLElement = noteOf(
              complaint,
              (i) => mend(this.view, at(), i),
              () => {
                this.view.dispatch({ selection: { anchor: at().from, head: at().to }, scrollIntoView: true });
                this.view.focus();
              },
            );
            dom.addEventListener('toggle', () => this.place(), true);
            return { complaint, dom };
          });
          this.dom.replaceChildren(...this.shown.map((s) => s.dom));
          this.place();
        }

        follow() {
          const complaints = this.view.state.field(notes);
          this.shown.forEach((s, i) => {
            const moved = complaints[i];
            if (moved) s.complaint = moved;
          });
        }

        place() {
          this.view.requestMeasure({
            key: this,
            read: (view) => {
              let below = 0;
              const top = view.documentPadding.top;
              return this.shown.map((s) => {
                const block = view.lineBlockAt(Math.min(s.complaint.from, view.state.doc.length));
                const at = Math.max(block.top + top, below);
                below = at + s.dom.offsetHeight + GAP;
                return at;
              });
            },
            write: (tops) =>
              tops.forEach((t, i) => this.shown[i]?.dom.style.setProperty('transform', `translateY(${t}px)`)),
          });
        }

        destroy() {
          this.dom.remove();
        }
      },
    ),
  ];
}
