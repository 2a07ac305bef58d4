/** What a person has put into a cut list, read as the floor as it lies. */
import type { KeptEnd } from '../cutting/job';
import type { Ticks, Units } from '../geometry/length';
import type { ListedCut } from '../takeoff/planning/asLaid';
import { planOnProblems as text } from '../takeoff/reading/planOnProblems';
import { countryWords } from '../takeoff/text/countryWords';
import { readLength } from '../takeoff/text/lengthText';
import { type ListedPiece, listedPieces, lostWords } from './keptMarks';

const KEPT: Readonly<Record<string, KeptEnd>> = { left: 'left', right: 'right', whole: 'whole', none: 'middle' };

export type AsLaidAnswer =
  | { readonly pieces: readonly ListedCut[]; readonly problems?: undefined }
  /** Sentences, at the piece each is about. */
  | { readonly problems: readonly string[] };

/** @param plankLength of the floor: a piece that long is a whole plank, even where an angled end is told as one end */
export function asLaid(cells: readonly (readonly unknown[])[], plankLength: Ticks, units: Units): AsLaidAnswer {
  const listed = listedPieces(cells);
  const cut = new Set(listed.filter(({ list, ticked }) => list === 'saw' && ticked).map(({ label }) => label));
  const inList = listed.filter(({ list, label }) => list === 'lay' && /^\d+-\d+$/.test(label));
  const read = inList.map((piece) => pieceOf(piece, cut, plankLength, units));
  const problems = read.flatMap((answer) => (typeof answer === 'string' ? [answer] : []));
  return problems.length > 0 ? { problems } : { pieces: read as readonly ListedCut[] };
}

function pieceOf(piece: ListedPiece, cut: ReadonlySet<string>, plankLength: Ticks, units: Units): ListedCut | string {
  const { label, ticked: isLaid } = piece;
  const shown = piece.length.split(' longer edge')[0];
  // A plank that is no whole number of steps is shown to the nearest one.
  const length = piece.keeps === 'whole' ? plankLength : ticksOf(shown, units);
  const plankNumber = Number.parseInt(piece.plank, 10);
  const from = length === plankLength ? 'whole' : KEPT[piece.keeps];
  if (length === null || !from || !(plankNumber > 0)) return text.listed(label, piece.length);
  const cutLength = piece.cutAt === '' ? length : ticksOf(piece.cutAt, units);
  if (cutLength === null || cutLength === 0) return text.cutAt(label, piece.cutAt);
  const found = piece.run === '' ? null : ticksOf(piece.run, units);
  if (piece.run !== '' && !found) return text.run(label, piece.run);
  const lost = piece.lost.trim().toLowerCase();
  const isGone = lostWords('us').includes(countryWords(lost, 'us'));
  if (lost !== '' && !isGone) return text.mark(label, piece.lost, lostWords(units));
  return {
    label,
    rowNumber: Number.parseInt(label, 10),
    length,
    cutLength,
    from,
    plankNumber,
    isStrip: piece.plank.includes('strip of'),
    isLaid,
    isCut: isLaid || ((cut.has(label) || piece.cutAt !== '') && !isGone),
    isGone,
    run: piece.begins ? { found } : null,
  };
}

function ticksOf(typed: string, units: Units): Ticks | null {
  const read = readLength(typed, 'plank', units);
  return read.ok ? read.ticks : null;
}
