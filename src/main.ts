/** What the outside may call: the custom functions, then what the menu and the sidebar call. Re-exports only. */
export * from './sheet/functions';
export {
  fillTab,
  onInstall,
  onOpen,
  openLedger,
  putOnTopOfTab,
  readTabCells,
  renameTab,
  showTab,
  startUnits,
  tabsOfOurs,
} from './sheet/menu';
