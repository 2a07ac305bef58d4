/** The custom functions, by subject. Each is documented, for the person who types it, where it is written. */
export { PLANK_AREA, PLANK_BOXES, PLANK_ROOM_AREA } from './areaFunctions';
export { PLANK_COMPARE } from './compareFunction';
export { PLANK_COUNT, PLANK_CUTS, PLANK_OFFCUTS } from './cutFunctions';
export { PLANK_FIT } from './fitFunction';
export { PLANK_LENGTH, PLANK_LENGTH_TEXT } from './lengthFunctions';
export { PLANK_ONWARD } from './onwardFunction';
export { PLANK_EMC, PLANK_MOVEMENT, PLANK_TRIM, PLANK_UNDERLAY } from './orderFunctions';
export { PLANK_LAST_ROW, PLANK_ROWS, PLANK_STAGGER } from './rowFunctions';
export { PLANK_LAST_RIPS } from './wallFunction';
