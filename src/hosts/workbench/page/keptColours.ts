/** Where a browser keeps that a person has chosen a light or a dark page, in a word, against the system. */
export const KEPT_COLOURS = 'sweeptable colours';
