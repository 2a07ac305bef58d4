/** Parts of a file as trees, and back. */

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

export function parsed(xml: string): Document {
  return new DOMParser().parseFromString(xml, 'text/xml');
}

export function withHead(xml: string): string {
  return xml.startsWith('<?xml') ? xml : HEAD + xml;
}

export function written(part: Document): string {
  return withHead(new XMLSerializer().serializeToString(part));
}

/** An element of a workbook's part with its attributes and text. */
export function made(
  part: Document,
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  text = '',
): Element {
  const element = part.createElementNS(MAIN, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  element.textContent = text;
  return element;
}
