/**
 * The laws of a cut plan. This file is the judge: it shares nothing with the search but the types of a job.
 *
 * 1. Every run is filled exactly, by pieces of whole length no longer than a plank; `whole` is an uncut plank.
 * 2. A run longer than a plank begins with a piece that kept its right factory end, ends with one that kept its left
 *    one, has whole planks between, and neither end is under the minimum piece.
 * 3. A run no longer than a plank is one piece.
 * 4. A plank gives at most one piece with its left end and one with its right end; what is cut from it and the kerfs
 *    between fit in its length.
 * 5. Joints of neighbouring rows of a room keep the minimum stagger.
 * 6. A twin strip comes from a first-row piece of its rip pair on the same plank, at least as long and with the same
 *    kept end (or whole), when both widths and a kerf fit in the plank's width. One strip a piece.
 * 7. What the plan says of itself is so: planks, bound, proof, and each rule it declares broken.
 */
import type { BrokenRule, CutJob, CutPlan, KeptEnd, PlannedPiece } from "./job";

const KEPT_ENDS: readonly KeptEnd[] = ["left", "right", "middle", "whole"];

/**
 * Every law that `plan` breaks, one readable line each with the numbers to replay it; empty when it is legal. Rows,
 * runs, pieces and planks are counted from 1 in the lines.
 *
 * A plan that declares rules broken is measured against what it declares: each breach of minimum piece or stagger
 * needs its entry, and each entry its breach. An entry stands for one run: `found` is the shorter of its end pieces,
 * or the least distance of its joints to those of the row before.
 */
export function checkCutPlan(job: CutJob, plan: CutPlan): readonly string[] {
	if (!matchesRows(job, plan))
		return ["the rows and runs of the plan are not those of the job"];
	const pieces = placedPieces(job, plan);
	return [
		...runLaws(job, plan),
		...pieceLaws(job, pieces),
		...plankLaws(job, pieces),
		...stripLaws(job, pieces),
		...ruleLaws(plan, breachesOf(job, plan)),
		...claimLaws(plan, pieces),
	];
}

interface PlacedPiece extends PlannedPiece {
	readonly rowIndex: number;
	readonly where: string;
}

function matchesRows(job: CutJob, plan: CutPlan): boolean {
	return (
		plan.rows.length === job.rows.length &&
		plan.rows.every(
			(row, rowIndex) => row.runs.length === job.rows[rowIndex]?.runs.length,
		)
	);
}

function placedPieces(job: CutJob, plan: CutPlan): PlacedPiece[] {
	return job.rows.flatMap((row, rowIndex) =>
		row.runs.flatMap((_, runIndex) =>
			piecesOf(plan, rowIndex, runIndex).map((piece, pieceIndex) => ({
				...piece,
				rowIndex,
				where: `${nameOfRun(rowIndex, runIndex)}, piece ${pieceIndex + 1}`,
			})),
		),
	);
}

function piecesOf(
	plan: CutPlan,
	rowIndex: number,
	runIndex: number,
): readonly PlannedPiece[] {
	return plan.rows[rowIndex]?.runs[runIndex] ?? [];
}

function nameOfRun(rowIndex: number, runIndex: number): string {
	return `row ${rowIndex + 1}, run ${runIndex + 1}`;
}

/** Laws 1 to 3, without the lengths of single pieces. */
function runLaws(job: CutJob, plan: CutPlan): string[] {
	return job.rows.flatMap((row, rowIndex) =>
		row.runs.flatMap(({ length }, runIndex) => {
			const name = nameOfRun(rowIndex, runIndex);
			const pieces = piecesOf(plan, rowIndex, runIndex);
			const filled = pieces.reduce((sum, piece) => sum + piece.length, 0);
			const fill =
				filled === length
					? []
					: [`${name}: pieces fill ${filled} of ${length}`];
			return [
				...fill,
				...(length > job.plankLength
					? longRunLaws(name, pieces)
					: shortRunLaws(name, pieces)),
			];
		}),
	);
}

function shortRunLaws(name: string, pieces: readonly PlannedPiece[]): string[] {
	return pieces.length === 1
		? []
		: [`${name}: ${pieces.length} pieces where one plank reaches`];
}

function longRunLaws(name: string, pieces: readonly PlannedPiece[]): string[] {
	const first = pieces[0];
	const last = pieces[pieces.length - 1];
	if (!first || !last || pieces.length < 2)
		return [`${name}: ${pieces.length} pieces, longer than a plank`];
	const broken: string[] = [];
	if (!keepsEnd(first, "right"))
		broken.push(
			`${name}: the first piece is cut from ${first.from}, not right or whole`,
		);
	if (!keepsEnd(last, "left"))
		broken.push(
			`${name}: the last piece is cut from ${last.from}, not left or whole`,
		);
	pieces.slice(1, -1).forEach((piece, index) => {
		if (piece.from !== "whole")
			broken.push(
				`${name}, piece ${index + 2}: ${piece.from} between the ends, not whole`,
			);
	});
	return broken;
}

function keepsEnd(piece: PlannedPiece, end: KeptEnd): boolean {
	return piece.from === end || piece.from === "whole";
}

/** Law 1 for single pieces. */
function pieceLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
	const full = job.plankLength;
	return pieces.flatMap(({ length, from, plank, where }) => {
		const broken: string[] = [];
		if (!isWhole(length, 1) || length > full)
			broken.push(`${where}: length ${length}, wanted 1 to ${full}`);
		if (!KEPT_ENDS.includes(from)) broken.push(`${where}: kept end ${from}`);
		if ((from === "whole") !== (length === full))
			broken.push(`${where}: ${from} of length ${length}, plank ${full}`);
		if (!isWhole(plank, 0)) broken.push(`${where}: plank index ${plank}`);
		return broken;
	});
}

function isWhole(value: number, least: number): boolean {
	return Number.isInteger(value) && value >= least;
}

/** Law 4. */
function plankLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
	const own = groupByPlank(pieces.filter((piece) => !piece.twin));
	return [...own].flatMap(([plank, cut]) => {
		const name = `plank ${plank + 1}`;
		const broken: string[] = [];
		for (const end of ["left", "right"] as const) {
			const count = cut.filter((piece) => piece.from === end).length;
			if (count > 1)
				broken.push(`${name}: ${count} pieces keep its ${end} end`);
		}
		if (cut.length > 1 && cut.some((piece) => piece.from === "whole")) {
			broken.push(`${name}: whole, and ${cut.length - 1} other pieces from it`);
		}
		const length = cut.reduce((sum, piece) => sum + piece.length, 0);
		const kerfs = (cut.length - 1) * job.kerf;
		if (length + kerfs > job.plankLength) {
			broken.push(
				`${name}: pieces ${length} + kerfs ${kerfs} = ${length + kerfs}, plank ${job.plankLength}`,
			);
		}
		return broken;
	});
}

function groupByPlank(
	pieces: readonly PlacedPiece[],
): Map<number, PlacedPiece[]> {
	const planks = new Map<number, PlacedPiece[]>();
	for (const piece of pieces) {
		const group = planks.get(piece.plank);
		if (group) group.push(piece);
		else planks.set(piece.plank, [piece]);
	}
	return planks;
}

/** Law 6. Longest strips choose first, so a strip goes without only if no choice could serve all. */
function stripLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
	const own = groupByPlank(pieces.filter((piece) => !piece.twin));
	const strips = groupByPlank(pieces.filter((piece) => piece.twin));
	return [...strips].flatMap(([plank, onPlank]) => {
		const free = longestFirst(own.get(plank) ?? []);
		return longestFirst(onPlank).flatMap((strip) => {
			const firstRows = firstRowsOf(job, strip.rowIndex);
			if (firstRows.length === 0)
				return [
					`${strip.where}: a strip in a row of no rip pair that fits the width`,
				];
			const at = free.findIndex((piece) => givesStrip(piece, strip, firstRows));
			if (at >= 0) free.splice(at, 1);
			return at >= 0
				? []
				: [
						`${strip.where}: no piece of plank ${plank + 1} gives a ${strip.from} of ${strip.length}`,
					];
		});
	});
}

function longestFirst(pieces: readonly PlacedPiece[]): PlacedPiece[] {
	return [...pieces].sort((a, b) => b.length - a.length);
}

/** First rows whose strip fits beside the row at `lastIndex` in the width of one plank. */
function firstRowsOf(job: CutJob, lastIndex: number): number[] {
	const widthOf = (rowIndex: number): number =>
		job.rows[rowIndex]?.width ?? Number.POSITIVE_INFINITY;
	return job.ripPairs
		.filter(
			([first, last]) =>
				last === lastIndex &&
				widthOf(first) + widthOf(last) + job.kerf <= job.plankWidth,
		)
		.map(([first]) => first);
}

function givesStrip(
	piece: PlacedPiece,
	strip: PlacedPiece,
	firstRows: readonly number[],
): boolean {
	return (
		firstRows.includes(piece.rowIndex) &&
		keepsEnd(piece, strip.from) &&
		piece.length >= strip.length
	);
}

/** Where the plan breaks the minimum piece (law 2) and the minimum stagger (law 5): one entry a run and rule. */
function breachesOf(job: CutJob, plan: CutPlan): BrokenRule[] {
	return job.rows.flatMap((row, rowIndex) => {
		const before =
			rowIndex > 0 && job.rows[rowIndex - 1]?.room === row.room
				? jointsOfRow(job, plan, rowIndex - 1)
				: [];
		return row.runs.flatMap((run, runIndex) => {
			const lengths = piecesOf(plan, rowIndex, runIndex).map(
				(piece) => piece.length,
			);
			const ends =
				run.length > job.plankLength
					? [...lengths.slice(0, 1), ...lengths.slice(-1)]
					: [];
			const shortest = Math.min(...ends, job.minPiece);
			const nearest = nearestDistance(
				jointsOfRun(run.x, lengths),
				before,
				job.minStagger,
			);
			const place = { rowIndex, runIndex };
			const breaches: BrokenRule[] = [];
			if (shortest < job.minPiece) {
				breaches.push({
					rule: "minimum piece",
					...place,
					found: shortest,
					wanted: job.minPiece,
				});
			}
			if (nearest < job.minStagger) {
				breaches.push({
					rule: "minimum stagger",
					...place,
					found: nearest,
					wanted: job.minStagger,
				});
			}
			return breaches;
		});
	});
}

function jointsOfRow(job: CutJob, plan: CutPlan, rowIndex: number): number[] {
	const runs = job.rows[rowIndex]?.runs ?? [];
	return runs.flatMap((run, runIndex) =>
		jointsOfRun(
			run.x,
			piecesOf(plan, rowIndex, runIndex).map((piece) => piece.length),
		),
	);
}

/** Room coordinates of the joints of a run that starts at `x`. */
function jointsOfRun(x: number, lengths: readonly number[]): number[] {
	let at = x;
	return lengths.slice(0, -1).map((length) => {
		at += length;
		return at;
	});
}

/** The least distance between two joints, or `wanted` when none are nearer than that. */
function nearestDistance(
	joints: readonly number[],
	others: readonly number[],
	wanted: number,
): number {
	let nearest = wanted;
	for (const a of joints) {
		for (const b of others) nearest = Math.min(nearest, Math.abs(a - b));
	}
	return nearest;
}

/** A breach without its entry, and an entry without its breach. */
function ruleLaws(plan: CutPlan, breaches: readonly BrokenRule[]): string[] {
	const undeclared = breaches.filter(
		(breach) => !plan.broken.some((entry) => isSame(entry, breach)),
	);
	const unfounded = plan.broken.filter(
		(entry) => !breaches.some((breach) => isSame(entry, breach)),
	);
	return [
		...undeclared.map(
			(breach) => `${describe(breach)}, and the plan does not say so`,
		),
		...unfounded.map(
			(entry) =>
				`${describe(entry)} is declared, and is not what the plan does`,
		),
	];
}

function isSame(a: BrokenRule, b: BrokenRule): boolean {
	const sameRun = a.rowIndex === b.rowIndex && a.runIndex === b.runIndex;
	return (
		sameRun && a.rule === b.rule && a.found === b.found && a.wanted === b.wanted
	);
}

function describe({
	rule,
	rowIndex,
	runIndex,
	found,
	wanted,
}: BrokenRule): string {
	return `${nameOfRun(rowIndex, runIndex)}: ${rule} ${found}, wanted ${wanted}`;
}

/** Law 7, what is said of planks, bound, steps and proof. */
function claimLaws(
	{ plankCount, bound, stop, steps }: CutPlan,
	pieces: readonly PlacedPiece[],
): string[] {
	const used = new Set(pieces.map((piece) => piece.plank));
	const highest = pieces.reduce(
		(most, piece) => Math.max(most, piece.plank),
		-1,
	);
	const broken: string[] = [];
	if (plankCount !== used.size)
		broken.push(`plank count ${plankCount}, planks used ${used.size}`);
	if (highest >= used.size)
		broken.push(
			`plank ${highest + 1} is used, and only ${used.size} planks are`,
		);
	if (!isWhole(bound, 0) || bound > plankCount)
		broken.push(`bound ${bound}, plank count ${plankCount}`);
	if (!isWhole(steps, 0)) broken.push(`steps ${steps}`);
	if (stop !== "proved fewest" && stop !== "step limit")
		broken.push(`stop: ${stop}`);
	if (stop === "proved fewest" && bound !== plankCount) {
		broken.push(
			`proved fewest, with bound ${bound} and plank count ${plankCount}`,
		);
	}
	return broken;
}
