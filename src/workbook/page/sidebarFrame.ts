import type { HtmlPage } from '../services/book';
import type { Workbook } from '../workbook';
import type { FromFrame, ToFrame } from './messages';

/** Shows the sidebar of a workbook in a frame of its own, cut off from the page but for calls to the script. */
export function createSidebarFrame(holder: HTMLElement, workbook: Workbook, shim: string) {
  let frame: HTMLIFrameElement | undefined;
  const close = () => {
    holder.hidden = true;
    holder.replaceChildren();
    frame = undefined;
  };
  window.addEventListener('message', ({ source, data }: MessageEvent<FromFrame>) => {
    if (!frame || source !== frame.contentWindow) return;
    if (data.kind === 'close') close();
    if (data.kind === 'focus') document.querySelector<HTMLElement>('#grid .o-grid')?.focus();
    if (data.kind === 'call') frame.contentWindow?.postMessage(answer(workbook, data), '*');
  });
  return {
    show(page: HtmlPage): void {
      frame = document.createElement('iframe');
      frame.title = page.title;
      frame.setAttribute('sandbox', 'allow-scripts allow-forms allow-popups allow-modals');
      frame.srcdoc = withShim(page.html, shim);
      // Whoever opened it goes on in it by keyboard: its page puts the focus where typing begins.
      const opened = frame;
      opened.addEventListener('load', () => opened.focus());
      holder.replaceChildren(heading(page.title, close), frame);
      holder.hidden = false;
    },
  };
}

function answer(workbook: Workbook, { call, functionName, args }: Extract<FromFrame, { kind: 'call' }>): ToFrame {
  try {
    return { kind: 'answer', call, result: workbook.runFromPage(functionName, args) };
  } catch (error) {
    return { kind: 'answer', call, error: (error as Error).message };
  }
}

/** The shim goes before every other script of the page. */
function withShim(html: string, shim: string): string {
  const script = `<script>${shim.replaceAll('</', '<\\/')}</script>`;
  return /<head[^>]*>/i.test(html) ? html.replace(/<head[^>]*>/i, (head) => head + script) : script + html;
}

function heading(title: string, close: () => void): HTMLElement {
  const element = document.createElement('h2');
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = '×';
  button.setAttribute('aria-label', 'Close the sidebar');
  button.addEventListener('click', close);
  element.append(title, button);
  return element;
}
