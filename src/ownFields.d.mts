/** Fields of the page that are only ever our own, although the browser or a text has the same word. */
export const OWN_FIELDS: readonly string[];
