/** Making elements of the page. */

type Attributes = Readonly<Record<string, string | number | boolean>> | string;
type Child = Node | string;

/** An element with its attributes, or its class alone; `true` sets one without a value, `false` leaves it away. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  return filled(document.createElement(tag), attributes, children);
}

/** An element of a drawing. */
export function drawn<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] {
  return filled(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

/** A button that does something and sends nothing. */
export function button(words: string, onPress: () => void, attributes: Attributes = {}): HTMLButtonElement {
  const made = element('button', attributes, words);
  made.type = 'button';
  made.addEventListener('click', onPress);
  return made;
}

/** The element the page is known to have. */
export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`Internal: the page has no "${id}".`);
  return found;
}

function filled<T extends Element>(target: T, attributes: Attributes, children: readonly Child[]): T {
  const named = typeof attributes === 'string' ? { class: attributes } : attributes;
  for (const [name, value] of Object.entries(named)) {
    if (value !== false) target.setAttribute(name, value === true ? '' : String(value));
  }
  target.append(...children);
  return target;
}
