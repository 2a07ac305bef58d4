/** Rows that lie, and the row that is begun: what is still to be cut for it is settled by what lies. */

import type { CutJob, KeptEnd } from '../../cutting/job';
import type { StockPiece } from '../../cutting/onward/onwardJob';
import { floorToStep, type Ticks } from '../../geometry/length';
import { sumOf } from '../../geometry/lists';
import { endAt, type ListedCut, type ListedRun } from './asLaid';
import type { PlanksInHand } from './inHand';

/** A piece of such a row: it lies, or it is to be cut next. */
export interface BegunPiece {
  readonly length: Ticks;
  readonly from: KeptEnd;
  /** Number of its plank in the list; `next n` of a new one. */
  readonly source: string;
  readonly isStrip?: true;
}

/** What more can be cut from, while pieces are taken from it. */
export interface Source extends StockPiece {
  /** Number of its plank in the list; `next n` of a new one. */
  readonly name: string;
  /** What is written on it; '' for nothing. */
  readonly mark: string;
  /** The piece that it was kept for. */
  readonly keptFor?: ListedCut;
}

export interface Books {
  /** What is in hand now. */
  sources: readonly Source[];
  /** Numbers of planks in the list that are begun or gone. */
  readonly opened: Set<number>;
  /** Those of them that are gone whole. */
  readonly spoilt: ReadonlySet<number>;
  /** New planks for begun rows that are not those of the list. */
  openedCount: number;
  /** Pieces of begun rows that some other piece in hand might have served. */
  loose: number;
}

export function beginBooks({ held, begun, spoilt }: PlanksInHand): Books {
  const sources = held.map(({ length, ends, width, plankNumber, mark, keptFor }) => {
    return { length, ends, width, name: `${plankNumber}`, mark, keptFor };
  });
  return { sources, opened: new Set([...begun, ...spoilt]), spoilt, openedCount: 0, loose: 0 };
}

interface RunSize {
  /** Ticks to be covered. */
  readonly length: number;
  readonly unit: number;
  readonly markingStep: Ticks;
}

/** The pieces of a run that lies or is begun, those still to be cut booked. */
export function finishRow(run: ListedRun, size: RunSize, books: Books, job: CutJob): readonly BegunPiece[] {
  const { pieces } = run;
  const lying = pieces.filter(({ isLaid }) => isLaid);
  const laid = lying.map((piece, i) => laidPiece(piece, endAt(i, pieces.length), size, job));
  if (lying.length === pieces.length) return laid;
  const done = [...laid];
  let left = size.length - sumOf(laid, ({ length }) => length);
  while (left >= size.markingStep || done.length === 0) {
    const listed = pieces[done.length];
    const next = nextPiece(left, done.length === 0 ? listed : null, size, job);
    done.push(booked(next, listed, size, books, job));
    left -= next.length;
  }
  return done;
}

/** As it was cut: a piece shorter than a plank is no whole one, whatever the list said. @param end that it must have kept */
function laidPiece(
  { cutLength, from, plankNumber, isStrip }: ListedCut,
  end: KeptEnd,
  { unit }: RunSize,
  job: CutJob,
): BegunPiece {
  const isWhole = cutLength >= Math.floor(job.plankLength * unit);
  const kept = isWhole ? 'whole' : from === 'whole' ? end : from;
  return { length: cutLength, from: kept, source: `${plankNumber}`, ...(isStrip && { isStrip }) };
}

/** The first piece as it was planned; then whole planks, and the last piece what is left. */
function nextPiece(
  left: number,
  first: ListedCut | null,
  { unit, markingStep }: RunSize,
  { plankLength }: CutJob,
): { readonly length: Ticks; readonly from: KeptEnd } {
  const plank = Math.round(plankLength * unit);
  if (first && left > plank) return { length: first.cutLength, from: first.cutLength >= plank ? 'whole' : 'right' };
  if (left >= plank) return { length: plank, from: 'whole' };
  return { length: Math.max(markingStep, floorToStep(left, markingStep)), from: first ? 'middle' : 'left' };
}

/** From where it was planned to come, be it a new plank, else from the shortest offcut that it fits, else from a new plank. */
function booked(
  next: { readonly length: Ticks; readonly from: KeptEnd },
  listed: ListedCut | undefined,
  { unit }: RunSize,
  books: Books,
  job: CutJob,
): BegunPiece {
  const units = Math.ceil(next.length / unit - 1e-9);
  const isAsListed = listed !== undefined && listed.from === next.from && !books.opened.has(listed.plankNumber);
  if (next.from !== 'whole') books.loose += 1;
  if (next.from !== 'whole' && !isAsListed) {
    const fits = books.sources
      .filter((source) => source.length >= units && hasEnd(source, next.from))
      .sort((a, b) => rank(a, listed) - rank(b, listed) || a.length - b.length);
    if (fits.length > 0) {
      books.sources = books.sources.flatMap((source) =>
        source === fits[0] ? taken(source, units, next.from, job) : [source],
      );
      return { ...next, source: fits[0].name };
    }
  }
  const name = isAsListed ? `${listed.plankNumber}` : `next ${books.openedCount++}`;
  if (isAsListed) books.opened.add(listed.plankNumber);
  const fresh: Source = { length: job.plankLength, ends: 'both', name, mark: '' };
  if (next.from !== 'whole') books.sources = [...books.sources, ...taken(fresh, units, next.from, job)];
  return { ...next, source: name };
}

function rank(source: Source, listed: ListedCut | undefined): number {
  return listed && (source.keptFor === listed || source.name === `${listed.plankNumber}`) ? 0 : 1;
}

function hasEnd({ ends }: Source, end: KeptEnd): boolean {
  return end === 'middle' || ends === 'both' || ends === end;
}

/** What is left of it, if anything. */
function taken(source: Source, units: number, end: KeptEnd, { kerf }: CutJob): readonly Source[] {
  const length = source.length - units - kerf;
  const { ends } = source;
  const left =
    end === 'middle' || ends === 'none' ? ends : ends === 'both' ? (end === 'left' ? 'right' : 'left') : 'none';
  return length > 0 ? [{ ...source, length, ends: left }] : [];
}
