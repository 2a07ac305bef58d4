// Placeholder, to be replaced whole: it lets the add-on be built before its menu is written.

/** Puts the add-on's menu into the spreadsheet. */
export function onOpen(): void {
  SpreadsheetApp.getUi().createAddonMenu().addItem('Plan a room', 'showSidebar').addToUi();
}

/** The first opening after the add-on was installed. */
export function onInstall(): void {
  onOpen();
}

/** Opens the room entry beside the sheet. */
export function showSidebar(): void {
  SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile('Sidebar').setTitle('Plank Ledger'));
}
