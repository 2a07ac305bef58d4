/** Joints of notched pieces that stay beside a corner of a wall, hearth or jamb, since nothing moves them away for nothing: in sentences. */
import { cornersInRuns } from '../../layout/corners';
import type { PlannedFloors } from '../planning/planFloors';
import type { LaidFloor } from '../reading/drawnRoom';
import type { FloorPiece } from '../result';
import { pieceText } from '../text/lengthText';
import { jointPlaces } from './cutList';

type ToldPiece = Pick<FloorPiece, 'label' | 'rowNumber' | 'runNumber' | 'leftOff' | 'cuts'>;

/** Most joints that are named one by one. */
const MOST_NAMED = 3;

/** @param pieces of the floor, in laying order */
export function cornerNotes(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
  pieces: readonly ToldPiece[],
): readonly string[] {
  const { read, layout } = planned.floors[floorIndex];
  const show = pieceText(read.units);
  const corners = cornersInRuns(layout);
  const near = jointPlaces(planned, floorIndex).flatMap((runs, i) =>
    runs.flatMap((joints, j) => {
      const { rowNumber } = layout.rows[i];
      const ofRun = pieces.filter(
        (piece) => piece.rowNumber === rowNumber && piece.runNumber === j + 1 && isFirstPart(piece),
      );
      return joints.flatMap((joint, k) => {
        const away = Math.min(...corners[i][j].map((corner) => Math.abs(corner - joint)));
        const met = [ofRun[k], ofRun[k + 1]];
        // A corner on the seam between rows leaves no notch, and what the trim covers is no prong any more.
        const isNotched = met.some(({ cuts }) => cuts.includes('notch'));
        const isTold = away < read.rules.minRip && isNotched && met.every(({ leftOff }) => leftOff === 0);
        return isTold ? [{ away, labels: met.map(({ label }) => label) }] : [];
      });
    }),
  );
  const named = near.slice(0, MOST_NAMED).map(({ away, labels }) => `${labels.join(' and ')} (${show(away)})`);
  if (named.length === 0) return [];
  const more = near.length - named.length;
  const all = more > 0 ? [...named, `${more} more`].join(', ') : named.join(', ');
  const joints = near.length === 1 ? 'The joint of' : 'The joints of';
  const verb = near.length === 1 ? 'stays' : 'stay';
  return [
    `${joints} ${all} ${verb} beside a corner of a wall or cut-out: to move ${near.length === 1 ? 'it' : 'them'} would take a plank, a cut or an offcut more. Glue the two pieces before the notch is cut.`,
  ];
}

function isFirstPart({ label }: ToldPiece): boolean {
  return !/[a-z]$/.test(label);
}
