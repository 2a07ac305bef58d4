/** What the page may do where the service shows it. */
import { asBuilt, LIVE, type PageBelief } from './belief';

/** Milliseconds: a thread that has not begun by then will not. */
const PATIENCE = 15_000;

/** Whether a thread begins that is started as `planning/planThread.ts` starts those that plan. */
function startsThread(): Promise<string> {
  return new Promise((resolve) => {
    setTimeout(() => resolve('no'), PATIENCE);
    try {
      const worker = new Worker(URL.createObjectURL(new Blob(['postMessage(1)'], { type: 'text/javascript' })));
      worker.onmessage = () => {
        worker.terminate();
        resolve('yes');
      };
      worker.onerror = () => resolve('no');
    } catch {
      resolve('no');
    }
  });
}

export const PAGE_BELIEFS: readonly PageBelief[] = [
  {
    what: 'the sidebar is 300 pixels wide',
    expected: ['300'],
    source: LIVE,
    find: async () => String(window.innerWidth),
  },
  {
    what: 'the script of this page arrived as it was built',
    expected: ['the same'],
    source: LIVE,
    async find() {
      const script = document.getElementById('page-script');
      return asBuilt(script?.textContent ?? '', script?.dataset.built ?? '');
    },
  },
  {
    what: 'the page may plan in a thread of its own',
    // Without one it plans itself, and typing waits.
    expected: ['yes', 'no'],
    source: LIVE,
    find: () => startsThread(),
  },
  {
    what: 'a drawing may open over the page',
    expected: ['yes'],
    source: 'HTML, dialog',
    async find() {
      const dialog = document.createElement('dialog');
      document.body.append(dialog);
      dialog.showModal();
      const { open } = dialog;
      dialog.remove();
      return open ? 'yes' : 'no';
    },
  },
  {
    what: 'the page may open a print window',
    expected: [],
    source: LIVE,
    find: async () => typeof window.print,
  },
  {
    what: 'browser',
    expected: [],
    source: LIVE,
    find: async () => `${navigator.language}, ${navigator.userAgent}`,
  },
];
