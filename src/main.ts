/** What the outside may call: the custom functions, then what the menu and the sidebar call. Re-exports only. */
export * from './sheet/functions';
export {
  fillCutList,
  fillFloorPlan,
  listRooms,
  onInstall,
  onOpen,
  openLedger,
  saveRoom,
  showTab,
  startUnits,
} from './sheet/menu';
