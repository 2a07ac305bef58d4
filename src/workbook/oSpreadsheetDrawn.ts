/**
 * What only a drawn grid asks for is worked out for the tab that is drawn, or when it is asked for: where rows and columns
 * begin, what of a tab is in view, which colours are in use. The engine would work it out after every command, and mostly for
 * all tabs; with twenty of them that takes longer than the command.
 */
import type * as Library from '@odoo/o-spreadsheet';

/** What of the engine's plugins is needed here; their other members are inherited as they are. */
interface Plugin {
  readonly getters: { getActiveSheetId(): string };
  finalize(): void;
}

interface HeaderPositions extends Plugin {
  headerPositions: Record<string, unknown>;
  isDirty: boolean;
  computeHeaderPositionsOfSheet(tabId: string): unknown;
  getColDimensions(tabId: string, column: number): unknown;
  getRowDimensions(tabId: string, row: number): unknown;
  getColRowOffset(dimension: string, from: number, to: number, tabId: string): unknown;
}

interface Viewports extends Plugin {
  sheetsWithDirtyViewports: Set<string>;
  readonly shouldAdjustViewports: boolean;
}

interface CustomColors extends Plugin {
  getCustomColors(): unknown;
}

type ClassOf<Instance> = new (config: never) => Instance;

interface Registry {
  get(name: string): unknown;
  replace(name: string, plugin: never): unknown;
}

const replaced = new WeakSet<object>();

/** Puts these plugins in the place of the engine's own, once for all workbooks of a page or process. */
export function installLateDrawing({ registries }: typeof Library): void {
  const { statefulUIPluginRegistry, coreViewsPluginRegistry } = registries;
  replace(statefulUIPluginRegistry, 'header_positions', positionsWhenAsked);
  replace(statefulUIPluginRegistry, 'viewport', viewOfShownTab);
  replace(coreViewsPluginRegistry, 'custom_colors', coloursWhenAsked);
}

function replace<Instance>(
  registry: Registry,
  name: string,
  made: (Own: ClassOf<Instance>) => ClassOf<Instance>,
): void {
  const Own = registry.get(name) as ClassOf<Instance>;
  if (replaced.has(Own)) return;
  const Made = made(Own);
  replaced.add(Made);
  registry.replace(name, Made as never);
}

/** Where the rows and columns of a tab begin. */
function positionsWhenAsked(Own: ClassOf<HeaderPositions>): ClassOf<HeaderPositions> {
  return class extends Own {
    private isAsked = false;

    override computeHeaderPositionsOfSheet(tabId: string): unknown {
      return this.isAsked ? super.computeHeaderPositionsOfSheet(tabId) : undefined;
    }

    override finalize(): void {
      if (this.isDirty) this.headerPositions = {};
      this.isDirty = false;
    }

    override getColDimensions(tabId: string, column: number): unknown {
      this.ask(tabId);
      return super.getColDimensions(tabId, column);
    }

    override getRowDimensions(tabId: string, row: number): unknown {
      this.ask(tabId);
      return super.getRowDimensions(tabId, row);
    }

    override getColRowOffset(dimension: string, from: number, to: number, tabId: string): unknown {
      this.ask(tabId);
      return super.getColRowOffset(dimension, from, to, tabId);
    }

    private ask(tabId: string): void {
      this.isAsked = true;
      this.headerPositions[tabId] ??= this.computeHeaderPositionsOfSheet(tabId);
      this.isAsked = false;
    }
  };
}

/** What of a tab is in view: of the others it is worked out when they are brought to the front. */
function viewOfShownTab(Own: ClassOf<Viewports>): ClassOf<Viewports> {
  return class extends Own {
    override finalize(): void {
      const shown = this.getters.getActiveSheetId();
      // After undoing something, every tab is scrolled to what was undone in it.
      const others = this.shouldAdjustViewports
        ? []
        : [...this.sheetsWithDirtyViewports].filter((tabId) => tabId !== shown);
      for (const tabId of others) this.sheetsWithDirtyViewports.delete(tabId);
      super.finalize();
      for (const tabId of others) this.sheetsWithDirtyViewports.add(tabId);
    }
  };
}

/** The colours in use, which a person may choose from. */
function coloursWhenAsked(Own: ClassOf<CustomColors>): ClassOf<CustomColors> {
  return class extends Own {
    override finalize(): void {}

    override getCustomColors(): unknown {
      super.finalize();
      return super.getCustomColors();
    }
  };
}
