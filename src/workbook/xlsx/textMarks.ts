/**
 * The apostrophe that marks a typed text as one is no part of it. A file has the text without it, and a look that says
 * so (`quotePrefix`; source: ECMA-376 part 1, 18.8.45); the engine has it in front of the text, both ways.
 */
import { placeIn } from './addresses';
import { type SharedTexts, sharedTexts, TEXTS } from './sharedTexts';
import { parsed } from './xml';

const TEXT_CELL = /<((?:\w+:)?)c\b([^>]*\bt="s"[^>]*)>\s*<\1v>(\d+)<\/\1v>\s*<\/\1c>/g;
const LOOK = /\bs="(\d+)"/;

interface TextCell {
  readonly address: string;
  readonly look: number;
  readonly text: string;
}

/** Where it stands from now on; undefined leaves it as it is. */
type Changed = { readonly look: number; readonly text: string } | undefined;

function withTextCells(sheetXml: string, texts: SharedTexts, change: (cell: TextCell) => Changed): string {
  return sheetXml.replace(TEXT_CELL, (whole, space: string, attributes: string, entry: string) => {
    const address = /\br="([A-Z]+\d+)"/.exec(attributes)?.[1] ?? '';
    const look = Number(LOOK.exec(attributes)?.[1] ?? 0);
    const changed = change({ address, look, text: texts.textAt(Number(entry)) });
    if (!changed) return whole;
    const others = attributes.replace(LOOK, '');
    const value = `<${space}v>${texts.entryFor(changed.text)}</${space}v>`;
    return `<${space}c${others} s="${changed.look}">${value}</${space}c>`;
  });
}

/** Takes the marks out of a file that goes out. */
export interface MarksOut {
  /** @param isMarked whether the apostrophe before a cell's text is a mark */
  sheet(xml: string, isMarked: (row: number, column: number, text: string) => boolean): string;
  texts(): string;
}

/** @param styles gets the looks that say so */
export function marksOut(textsXml: string, styles: Document): MarksOut {
  const texts = sharedTexts(textsXml);
  const looks = styles.getElementsByTagName('cellXfs')[0];
  const twins = new Map<number, number>();
  const add = (look: number) => {
    const twin = looks?.children[look]?.cloneNode(true) as Element;
    twin.setAttribute('quotePrefix', '1');
    looks?.append(twin);
    looks?.setAttribute('count', String(looks.children.length));
    return (looks?.children.length ?? 0) - 1;
  };
  const twinOf = (look: number) => {
    const twin = twins.get(look) ?? add(look);
    twins.set(look, twin);
    return twin;
  };
  const isAny = texts.some((text) => text.startsWith("'"));
  return {
    sheet: (xml, isMarked) =>
      !isAny
        ? xml
        : withTextCells(xml, texts, ({ address, look, text }) => {
            const { row, column } = placeIn(address);
            if (!text.startsWith("'") || !isMarked(row, column, text)) return undefined;
            return { look: twinOf(look), text: text.slice(1) };
          }),
    texts: () => (isAny ? texts.xml() : textsXml),
  };
}

/** Puts the marks into a file that comes in, where the engine would not take a text as it is. */
export function withMarks(
  sheets: ReadonlyMap<string, string>,
  parts: Readonly<Record<string, string>>,
  stylesXml: string,
): { readonly sheets: ReadonlyMap<string, string>; readonly texts: Readonly<Record<string, string>> } {
  const texts = sharedTexts(parts[TEXTS] ?? '');
  if (!stylesXml.includes('quotePrefix') && !texts.some((text) => /^[=']/.test(text))) return { sheets, texts: {} };
  const looks = marksOfLooks(stylesXml);
  const marked = [...sheets].map(([name, xml]): [string, string] => [
    name,
    withTextCells(xml, texts, ({ look, text }) =>
      needsMark(text, looks[look] ?? '') ? { look, text: `'${text}` } : undefined,
    ),
  ]);
  return { sheets: new Map(marked), texts: { [TEXTS]: texts.xml() } };
}

type LookMark = 'marked' | 'plain text' | '';

/** What `'=` starts is marked already: our files had the mark in the text once. */
function needsMark(text: string, look: LookMark): boolean {
  if (text.startsWith('=')) return true;
  // There the engine takes an apostrophe for a part of the text.
  if (look === 'plain text' || text === '') return false;
  return look === 'marked' || /^'(?!=)/.test(text);
}

function marksOfLooks(stylesXml: string): readonly LookMark[] {
  const styles = parsed(stylesXml || '<none/>');
  const formats = [...styles.getElementsByTagNameNS('*', 'numFmt')];
  const plain = formats
    .filter((one) => one.getAttribute('formatCode') === '@')
    .map((one) => one.getAttribute('numFmtId'));
  const looks = styles.getElementsByTagNameNS('*', 'cellXfs')[0];
  return [...(looks?.children ?? [])].map((look) => {
    if ([PLAIN_TEXT, ...plain].includes(look.getAttribute('numFmtId'))) return 'plain text';
    return /^(?:1|true)$/.test(look.getAttribute('quotePrefix') ?? '') ? 'marked' : '';
  });
}

/** The file's own number of the format. Source: ECMA-376 part 1, 18.8.30. */
const PLAIN_TEXT = '49';
