/** What the outside may call: the custom functions, then what the menu and the sidebar call. Re-exports only. */
export { PLANK_AREA } from './sheet/functions';
export { onInstall, onOpen, showSidebar } from './sheet/menu';
