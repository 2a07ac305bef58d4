export type AddOnFiles = Record<'Code.js' | 'Sidebar.html' | 'appsscript.json', string>;

/** The texts of the three files, by name. */
export function addOnFiles(): Promise<AddOnFiles>;

/** Writes the three files into `folder` and returns their texts. */
export function buildAddOn(folder: string): Promise<AddOnFiles>;

/** The folder of this project. */
export const projectFolder: string;
