/** What the outside may call: the custom functions, then what the menu and the sidebar call. Re-exports only. */
export * from './sheet/functions';
export {
  fillCutList,
  fillFloorPlan,
  fillTab,
  listRooms,
  onInstall,
  onOpen,
  openLedger,
  readTabCells,
  saveRoom,
  showTab,
  startUnits,
} from './sheet/menu';
