/** Areas of the page that scroll but hold nothing that the Tab key could go to. */

/** While it has more to show than fits, the tab key leads to the area, and the arrow keys scroll it. */
export function keepReachable(area: HTMLElement, name: string): void {
  const look = () => {
    const scrolls = area.scrollHeight > area.clientHeight + 1 || area.scrollWidth > area.clientWidth + 1;
    if (scrolls) {
      area.tabIndex = 0;
      area.setAttribute('role', 'region');
      area.setAttribute('aria-label', name);
      return;
    }
    for (const attribute of ['tabindex', 'role', 'aria-label']) area.removeAttribute(attribute);
  };
  new ResizeObserver(look).observe(area);
  new MutationObserver(look).observe(area, { childList: true, characterData: true, subtree: true });
}
