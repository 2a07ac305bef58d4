/**
 * Cells are worked out when somebody asks for one, not after every command, and then only in tabs that have changed or
 * hold formulas. Filling a tab takes some twenty commands, and each that adds or removes a tab or a row would otherwise
 * make the engine work out every cell of the workbook anew.
 */
import type * as Library from '@odoo/o-spreadsheet';

const EVALUATION = 'evaluation';
/** Set on the class that stands in, so that it is put in once for all workbooks of a page or process. */
const LATE = 'isLate';
/** More changed cells than these are worked out tab by tab, without asking what depends on each. Our choice. */
const MANY = 200;

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

interface EngineCommand {
  readonly type: string;
  readonly sheetId?: string;
}

/** What of the engine's own plugin is needed here; its other members are inherited as they are. */
interface Evaluation {
  readonly getters: {
    getSheetIds(): readonly string[];
    getCells(tabId: string): readonly { readonly id: number; readonly isFormula: boolean }[];
    getCellPosition(cellId: number): Position;
  };
  readonly evaluator: {
    evaluatedCells: { clearSheet(tabId: string): void };
    evaluateAllCells(): void;
    evaluate(ranges: readonly object[]): void;
  };
  readonly positionsToUpdate: readonly Position[];
  shouldRebuildDependenciesGraph: boolean;
  beforeHandle(command: EngineCommand): void;
  handle(command: EngineCommand): void;
  finalize(): void;
  [member: string]: unknown;
}

type EvaluationClass = (new (config: never) => Evaluation) & { readonly getters: readonly string[]; [LATE]?: true };
type LateClass = new (config: never) => Evaluation & { settle(): void };

/** Puts the plugin that works cells out late in the place of the engine's own. */
export function installLateEvaluation(library: typeof Library): void {
  const registry = library.registries.coreViewsPluginRegistry;
  const Evaluating = registry.get(EVALUATION) as unknown as EvaluationClass;
  if (Evaluating[LATE]) return;
  const Late = lateClass(Evaluating, (type) => library.invalidateEvaluationCommands.has(type as never));
  Object.defineProperty(Late, LATE, { value: true });
  for (const asked of [...Evaluating.getters, 'exportForExcel']) settleBefore(Late, asked);
  registry.replace(EVALUATION, Late as never);
}

/** @param changesAll whether a command of that type, where it names no tab, may change cells of all of them */
function lateClass(Evaluating: EvaluationClass, changesAll: (type: string) => boolean): LateClass {
  return class extends Evaluating {
    private waits = false;
    private isSettling = false;
    /** Tabs whose cells are to be worked out, all of them when `isAll`. */
    private readonly touched = new Set<string>();
    /** Of the tabs that nothing has touched since: whether they hold formulas. */
    private readonly withFormulas = new Map<string, boolean>();
    private isAll = true;

    constructor(config: never) {
      super(config);
      this.evaluator.evaluateAllCells = () => this.evaluateTouched();
    }

    override beforeHandle(command: EngineCommand): void {
      super.beforeHandle(command);
      if (command.sheetId !== undefined) this.touched.add(command.sheetId);
      else if (changesAll(command.type)) this.isAll = true;
    }

    override handle(command: EngineCommand): void {
      super.handle(command);
      if (this.positionsToUpdate.length > MANY) this.shouldRebuildDependenciesGraph = true;
    }

    override finalize(): void {
      this.waits = true;
    }

    settle(): void {
      if (!this.waits) return;
      this.waits = false;
      this.isSettling = true;
      super.finalize();
      this.isSettling = false;
      for (const tabId of this.isAll ? [...this.withFormulas.keys()] : this.touched) this.withFormulas.delete(tabId);
      this.touched.clear();
      this.isAll = false;
    }

    private evaluateTouched(): void {
      // Asked for by a command, before what waits is settled: the engine does not know yet what depends on what.
      if (!this.isSettling) {
        this.shouldRebuildDependenciesGraph = true;
        this.isAll = true;
        this.waits = true;
        return;
      }
      const { evaluator, getters, touched, isAll } = this;
      const isStale = (tabId: string) => isAll || touched.has(tabId) || this.holdsFormulas(tabId);
      const stale = getters.getSheetIds().filter(isStale);
      for (const tabId of [...touched, ...stale]) evaluator.evaluatedCells.clearSheet(tabId);
      const ranges = stale.flatMap((sheetId) => {
        const cells = getters.getCells(sheetId);
        if (cells.length === 0) return [];
        return [{ sheetId, zone: zoneAround(cells.map(({ id }) => getters.getCellPosition(id))) }];
      });
      evaluator.evaluate(ranges);
    }

    private holdsFormulas(tabId: string): boolean {
      const holds = this.withFormulas.get(tabId) ?? this.getters.getCells(tabId).some(({ isFormula }) => isFormula);
      this.withFormulas.set(tabId, holds);
      return holds;
    }
  };
}

function zoneAround(positions: readonly Position[]) {
  const zone = { top: Infinity, left: Infinity, bottom: 0, right: 0 };
  for (const { row, col } of positions) {
    zone.top = Math.min(zone.top, row);
    zone.bottom = Math.max(zone.bottom, row);
    zone.left = Math.min(zone.left, col);
    zone.right = Math.max(zone.right, col);
  }
  return zone;
}

/** Whatever asks for a cell, or for anything made of cells, finds them worked out. */
function settleBefore(Late: LateClass, asked: string): void {
  const own = Late.prototype[asked] as (...args: unknown[]) => unknown;
  Late.prototype[asked] = function (this: InstanceType<LateClass>, ...args: unknown[]) {
    this.settle();
    return own.apply(this, args);
  };
}
