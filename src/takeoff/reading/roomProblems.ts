/** The sentences about a room that its measurements cannot make: every fault of `room/` in words. */

import type { Ticks, Units } from '../../geometry/length';
import { isFilled } from '../../geometry/lists';
import type { MeasuredPart, RoomFault } from '../../room/faults';
import type { CornerPair } from '../../room/tapeAdvice';
import { capital } from '../text/capital';
import { roomText } from '../text/lengthText';
import { numberText } from '../text/numberText';
import { plural } from '../text/plural';
import { TURN_WANTED } from './problems';

type SentenceFor = {
  readonly [C in RoomFault['code']]: (
    fault: Extract<RoomFault, { code: C }>,
    show: (length: Ticks) => string,
  ) => string;
};

/** What is wrong with a measured room, where, and what is wanted. */
export function roomFaultText(fault: RoomFault, units: Units): string {
  const sentence = sentences[fault.code] as (fault: RoomFault, show: (length: Ticks) => string) => string;
  return sentence(fault, roomText(units));
}

const sentences: SentenceFor = {
  'not above 0': ({ what, number, found }, show) =>
    `${partName(what, number)} is ${show(found)}. Type a length greater than 0.`,

  'too few walls': ({ found }) => `The room has ${plural(found, 'wall')}. Give at least three.`,

  'turn missing': ({ wallNumber }) => `Wall ${wallNumber}: the turn at its end is blank. ${TURN_WANTED}`,

  'turns do not add up': ({ found, wanted }) =>
    `The turns add up to ${numberText(found, 2)} degrees; all the way round a room it is ${wanted}. Check where R and L stand.`,

  'does not close': ({ right, far, by, allowed, advised }, show) =>
    `The walls do not meet: the last ends ${show(by)} from the start of wall 1 (${sideways(right, far, show)}). Up to ${show(allowed)} is spread over the walls; check their lengths and turns.${adviceText(advised)}`,

  'walls meet': ({ wallNumbers: [one, other] }) =>
    one === other
      ? `Wall ${one} has no length where it meets the next. Check the wall lengths and turns.`
      : `Wall ${one} and wall ${other} cross or touch. Check the wall lengths and turns.`,

  diagonal: ({ found, moreThan, lessThan }, show) =>
    `The diagonal is ${show(found)}. With these walls it is more than ${show(moreThan)} and less than ${show(lessThan)}.`,

  'diagonals disagree': ({ found, wanted, by }, show) =>
    `The other diagonal is ${show(found)}; by the walls and the first diagonal it should be ${show(wanted)}, a difference of ${show(by)}. Measure both again.`,

  'measure off': ({ what, number, found, drawn, by }, show) =>
    `${what === 'wall' ? 'Wall' : 'Diagonal'} ${number} is ${show(found)}; by the other measures it should be ${show(drawn)}, ${show(Math.abs(by))} ${by > 0 ? 'more' : 'less'}. Measure it again.`,

  'no such corner': ({ diagonalNumber, found, cornerCount }) =>
    `Diagonal ${diagonalNumber} goes to corner ${found}, but the room has ${cornerCount} corners. Corner 1 is where wall 1 starts.`,

  'diagonal of one corner': ({ diagonalNumber }) =>
    `Diagonal ${diagonalNumber} goes from a corner to itself. Type two different corners.`,

  'turn and diagonals disagree': ({ wallNumber }) =>
    `The turn at the end of wall ${wallNumber} goes the other way from what the measures say. Check the turn, and between which corners each diagonal was measured.`,

  'side too long': ({ found, longest }, show) =>
    `The room is ${show(found)} from end to end. At most ${show(longest)} can be laid out; check the unit of the lengths.`,

  'nothing left': () => 'The rectangles leave no floor. Add a rectangle, or take away less.',

  'parts not connected': ({ partCount }) =>
    `The rectangles make ${partCount} parts that do not touch along an edge. Move them together, or plan each as a room.`,

  'no such wall': ({ what, number, found, wallCount }) =>
    `${partName(what, number)} is at wall ${found}, but the room has ${wallCount} walls. Type a number from 1 to ${wallCount}.`,

  'wall bows twice': ({ wallNumber }) =>
    `Wall ${wallNumber} has more than one bow. Measure it either at several places or as one curve.`,

  'bow off its wall': ({ wallNumber, along, wallLength }, show) =>
    `Wall ${wallNumber} is ${show(wallLength)} long, but a place of its bow is ${show(along)} along it. Give places between its corners.`,

  'curve too deep': ({ wallNumber, found, most }, show) =>
    `Wall ${wallNumber} rises ${show(found)} from its chord. At most half a circle, ${show(most)}, can be drawn; divide the wall.`,

  'bowed walls meet': () =>
    'The bowed walls cross or touch. Check how far they lie off the straight line, and which way.',

  'front too curved': ({ cutoutNumber, found, most }, show) =>
    `Cut-out ${cutoutNumber} rises ${show(found)} at its front. At most ${show(most)}, its depth or half its length, can be drawn.`,

  'cut-out outside': ({ cutoutNumber }) =>
    `Cut-out ${cutoutNumber} lies outside the room. Check its wall and the distances along and off it.`,

  'cut-out fills room': ({ cutoutNumber }) =>
    `Cut-out ${cutoutNumber} takes up the whole room. Check its length and depth.`,

  'doorway off its wall': ({ doorwayNumber, wallNumber, start, end, wallLength }, show) =>
    `Doorway ${doorwayNumber} runs from ${show(start)} to ${show(end)} along wall ${wallNumber}, which is ${show(wallLength)} long. Check its place and width.`,

  'doorways overlap': ({ doorwayNumbers: [one, other] }) =>
    `Doorway ${one} and doorway ${other} overlap. Check their places and widths.`,

  'doorway meets room': ({ doorwayNumber }) =>
    `The floor in doorway ${doorwayNumber} would run back into the room. Type a smaller depth, or check its wall.`,
};

/** `Wall 3`; a room has one length and one width. */
function partName(what: MeasuredPart | 'bow', number: number): string {
  const name = capital(what);
  if (what === 'diagonal') return number === 1 ? name : 'Other diagonal';
  return what === 'length' || what === 'width' ? name : `${name} ${number}`;
}

/** A room that is out of square is measured from corner to corner as well. */
function adviceText(advised: readonly CornerPair[]): string {
  if (advised.length === 0) return '';
  const pairs = advised.map(([from, to]) => `${from} to ${to}`).join(', ');
  return ` If they are right, the room is out of square: add diagonals between corners (wall 1 starts at corner 1), best ${pairs}.`;
}

/** `3" to the right, 1" short`, leaving out what is nothing. */
function sideways(right: Ticks, far: Ticks, show: (length: Ticks) => string): string {
  const across = right === 0 ? '' : `${show(Math.abs(right))} to the ${right > 0 ? 'right' : 'left'}`;
  const along = far === 0 ? '' : `${show(Math.abs(far))} ${far > 0 ? 'beyond it' : 'nearer'}`;
  return [across, along].filter(isFilled).join(', ');
}
