export type AddOnFiles = Record<'Code.js' | 'Sidebar.html' | 'appsscript.json', string>;

/** The texts of the three files, by name. */
export function addOnFiles(): Promise<AddOnFiles>;

/** Bytes of a file by the source folder they come from, the heaviest first. */
export type FolderWeights = Readonly<Record<string, number>>;

/** Writes the three files into `folder`. */
export function buildAddOn(folder: string): Promise<{
  readonly files: AddOnFiles;
  readonly weights: Readonly<Record<'Code.js' | 'Sidebar.html', FolderWeights>>;
}>;

/** The folder of this project. */
export const projectFolder: string;
