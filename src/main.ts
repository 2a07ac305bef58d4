/** What the outside may call: the custom functions, then what the menu and the sidebar call. Re-exports only. */
export { tryCalls, tryInCell } from './sheet/check/tryCalls';
export * from './sheet/functions';
export {
  checkSpreadsheet,
  fillTab,
  onInstall,
  onOpen,
  openLedger,
  putOnTopOfTab,
  readTabCells,
  renameTab,
  showLargeView,
  showTab,
  spreadsheetLocale,
  startUnits,
  tabsOfOurs,
} from './sheet/menu';
