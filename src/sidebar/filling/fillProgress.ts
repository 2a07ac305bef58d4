/** How far filling is, tab by tab, and a way to stop between two of them. */
import { button, element } from '../parts/dom';
import type { Spreadsheet } from '../sheetStore';

/** Milliseconds: work that is done sooner shows neither bar nor button. */
const BEFORE_SHOWN = 1000;

/** The part of the page that shows it. */
export interface FillProgressPart {
  readonly element: HTMLElement;
  /**
   * Does the work with a spreadsheet that can be stopped: a tab that is being written is finished, the next is not begun.
   *
   * @param steps how many tabs there are to write; 0 where that is not known
   */
  during<Answer>(
    spreadsheet: Spreadsheet,
    steps: number,
    work: (store: Spreadsheet) => Promise<Answer>,
  ): Promise<Answer>;
}

/** @param told what is being done, in words: `Writing "Cut list - Den", tab 3` */
export function fillProgress(told: (words: string) => void): FillProgressPart {
  let isStopped = false;
  const bar = element('progress', { 'aria-label': 'Filling the tabs' });
  const stop = button('Stop', () => {
    isStopped = true;
    stop.setAttribute('aria-disabled', 'true');
    told('Stopping after this tab ...');
  });
  const part = element('div', { class: 'fill-progress', hidden: true }, bar, stop);
  return {
    element: part,
    async during(spreadsheet, steps, work) {
      isStopped = false;
      stop.removeAttribute('aria-disabled');
      bar.removeAttribute('value');
      if (steps > 0) bar.max = steps;
      const timer = window.setTimeout(() => {
        part.hidden = false;
      }, BEFORE_SHOWN);
      let count = 0;
      const writes = (title: string) => {
        if (isStopped) throw new Error(`Stopped before "${title}".`);
        count += 1;
        if (steps > 0) bar.value = count - 0.5;
        told(`Writing "${title}", tab ${count}${steps > 0 ? ` of ${steps}` : ''} ...`);
      };
      try {
        return await work(watched(spreadsheet, writes));
      } finally {
        window.clearTimeout(timer);
        part.hidden = true;
      }
    },
  };
}

/** The same spreadsheet, told of every tab before it is written. A tab that somebody changed meanwhile is told once. */
function watched(spreadsheet: Spreadsheet, writes: (title: string) => void): Spreadsheet {
  let last = '';
  return {
    ...spreadsheet,
    async write(block, version) {
      if (block.mark !== last) writes(block.title);
      last = block.mark;
      return spreadsheet.write(block, version);
    },
  };
}
