/** Where the keys go in the page around the sidebar's frame and the dialogs. */

import { focusGrid } from './grid';

/** Opens a dialog with one last button; when it is closed, typing goes on where it was. */
export function openDialog(dialog: HTMLDialogElement): void {
  // A page in a frame puts the focus into its first field when it is ready, dialog or not.
  const comeBack = () => dialog.querySelector('button')?.focus();
  const whenLost = () => setTimeout(() => document.activeElement?.tagName === 'IFRAME' && comeBack());
  window.addEventListener('blur', whenLost);
  dialog.addEventListener('close', () => {
    window.removeEventListener('blur', whenLost);
    dialog.remove();
    // It may have opened before anything had the focus.
    if (document.activeElement === document.body) focusGrid();
    goOnTyping();
  });
  document.body.append(dialog);
  dialog.showModal();
}

/**
 * Puts the caret back where the keys go, after a dialog. The browser gives the focus back to the grid's hidden field, but
 * leaves the caret outside it, and what is typed arrives nowhere.
 */
export function goOnTyping(): void {
  const field = document.activeElement;
  // All of the field: the first key takes the place of what the cell holds.
  if (field instanceof HTMLElement && field.isContentEditable) getSelection()?.selectAllChildren(field);
}
