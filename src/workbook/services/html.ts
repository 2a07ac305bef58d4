import type { Book, HtmlPage } from './book';
import { strict } from './strict';

type HtmlOutput = GoogleAppsScript.HTML.HtmlOutput;
type HtmlService = GoogleAppsScript.HTML.HtmlService;

const pages = new WeakMap<object, () => HtmlPage>();

/** The page that the script made. */
export function htmlPageOf(output: HtmlOutput): HtmlPage {
  const page = pages.get(output);
  if (!page) throw new Error('The embedded workbook was given something that is not a page of its own');
  return page();
}

/** Pages from the script's own files; templates with scriptlets are not implemented. */
export function htmlService(book: Book): HtmlService {
  return strict<HtmlService>(book, 'HtmlService', {
    createHtmlOutput: (html?: unknown) => htmlOutput(book, String(html ?? '')),
    createHtmlOutputFromFile: (name: string) => {
      const html = book.htmlFiles.get(name.replace(/\.html$/, ''));
      if (html === undefined) throw new Error(`No HTML file named ${name} was found.`);
      return htmlOutput(book, html);
    },
  } satisfies Partial<Record<keyof HtmlService, unknown>>);
}

function htmlOutput(book: Book, start: string): HtmlOutput {
  let title = '';
  let html = start;
  const size: { width?: number; height?: number } = {};
  const output: HtmlOutput = strict<HtmlOutput>(book, 'HtmlOutput', {
    getContent: () => html,
    getTitle: () => title,
    append: (more: string) => {
      html += more;
      return output;
    },
    setTitle: (text: string) => {
      title = text;
      return output;
    },
    // A sidebar is 300 px wide whatever is asked; a dialog is as large as it was asked to be.
    setWidth: (pixels: number) => {
      size.width = pixels;
      return output;
    },
    setHeight: (pixels: number) => {
      size.height = pixels;
      return output;
    },
    addMetaTag: () => output,
  } satisfies Partial<HtmlOutput>);
  pages.set(output, () => ({ title, html, ...size }));
  return output;
}
