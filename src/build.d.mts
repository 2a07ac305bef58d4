/** Builds the three files of the add-on into `folder` (dist by default) and returns their texts by name. */
export function buildAddOn(folder?: string): Promise<Record<'Code.js' | 'Sidebar.html' | 'appsscript.json', string>>;
