/** The sentences about rooms that cannot be joined into one floor. */
import type { Units } from '../../geometry/length';
import type { JoinFault, RoomJoin } from '../../room/join';
import { roomText } from '../text/lengthText';

/** Rooms of one floor with planks of two sizes. */
export function planksUnlikeText(room: string, size: string, first: string, firstSize: string): string {
  return `${room} has planks of ${size}, ${first} planks of ${firstSize}. One floor is laid from planks of one size: type the same product in both rooms, or plan each on its own.`;
}

/** @param names of the rooms in their order */
export function joinFaultText(
  fault: JoinFault,
  names: readonly string[],
  joins: readonly RoomJoin[],
  units: Units,
): string {
  const show = roomText(units);
  switch (fault.code) {
    case 'no such doorway':
      return `${names[fault.roomNumber - 1]} has no doorway ${fault.found}. Check the numbers of the doorways that face each other.`;
    case 'room not joined':
      return `No doorway leads to ${names[fault.roomNumber - 1]}. Say at a doorway of another room that its floor goes on into it.`;
    case 'doorways do not meet': {
      const { room, toRoom } = joins[fault.joinNumber - 1];
      // Rooms that other doorways have turned apart miss each other by no length at all.
      if (!Number.isFinite(fault.by)) {
        return `The doorways between ${names[room - 1]} and ${names[toRoom - 1]} do not face each other, going by how the other doorways place the rooms. Check which walls they are in.`;
      }
      return `The doorways between ${names[room - 1]} and ${names[toRoom - 1]} miss each other by ${show(fault.by)}; up to ${show(fault.allowed)} is accepted. Check their places and the wall thickness.`;
    }
    case 'rooms overlap':
      return `${names[fault.roomNumbers[0] - 1]} and ${names[fault.roomNumbers[1] - 1]} would overlap. Check which walls the doorways are in.`;
    case 'joined side too long':
      return `The joined rooms are ${show(fault.found)} from end to end. At most ${show(fault.longest)} can be laid out as one floor.`;
  }
}
