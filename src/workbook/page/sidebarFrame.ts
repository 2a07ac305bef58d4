import type { HtmlPage } from '../services/book';
import type { Workbook } from '../workbook';
import { goOnTyping } from './focus';
import type { FromFrame, ToFrame } from './messages';

/** Shows a page of the script in a frame of its own, cut off from the page around it but for calls to the script. */
export function createPageFrame(holder: HTMLElement, workbook: Workbook, shim: string) {
  let frame: HTMLIFrameElement | undefined;
  const close = () => {
    if (holder instanceof HTMLDialogElement) holder.close();
    holder.hidden = true;
    holder.replaceChildren();
    frame = undefined;
  };
  window.addEventListener('message', ({ source, data }: MessageEvent<FromFrame>) => {
    if (!frame || source !== frame.contentWindow) return;
    if (data.kind === 'close') close();
    if (data.kind === 'focus') {
      document.querySelector<HTMLElement>('#grid .o-grid')?.focus();
      goOnTyping();
    }
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
      // The window is no larger than it is, as on the platform.
      frame.style.width = page.width === undefined ? '' : `min(${page.width}px, 100%)`;
      frame.style.height = page.height === undefined ? '' : `min(${page.height}px, 100vh - 110px)`;
      holder.style.width = page.width === undefined ? '' : `min(${page.width}px, 100vw - 60px)`;
      holder.replaceChildren(heading(page.title, close), frame);
      holder.hidden = false;
      if (holder instanceof HTMLDialogElement && !holder.open) holder.showModal();
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
  button.setAttribute('aria-label', `Close ${title}`);
  button.addEventListener('click', close);
  element.append(title, button);
  return element;
}
